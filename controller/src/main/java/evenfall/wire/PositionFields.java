package evenfall.wire;

/** Latitude and longitude as receivers print them: degrees and minutes run together, then the hemisphere. */
final class PositionFields {

    private boolean present;
    private double latitudeDeg;
    private double longitudeDeg;

    boolean present() {
        return present;
    }

    double latitudeDeg() {
        return latitudeDeg;
    }

    double longitudeDeg() {
        return longitudeDeg;
    }

    /** Reads the four fields; half a position is refused. */
    void read(Fields fields) {
        boolean hasLatitude = fields.unsigned();
        if (hasLatitude) {
            latitudeDeg = degrees(fields, 90);
        }
        latitudeDeg = hemisphere(fields, hasLatitude, latitudeDeg, 'N', 'S');
        boolean hasLongitude = fields.unsigned();
        if (hasLongitude) {
            longitudeDeg = degrees(fields, 180);
        }
        longitudeDeg = hemisphere(fields, hasLongitude, longitudeDeg, 'E', 'W');
        if (hasLatitude != hasLongitude) {
            fields.refuse();
        }
        present = hasLatitude && hasLongitude;
    }

    private static double degrees(Fields fields, long limitDeg) {
        long scale = fields.scale();
        long whole = fields.wholePart() / 100;
        long minutes = fields.wholePart() % 100;
        long scaledMinutes = (whole * 60 + minutes) * scale + fields.fraction();
        if (whole > limitDeg || minutes >= 60 || scaledMinutes > limitDeg * 60 * scale) {
            fields.refuse();
        }
        return (double) scaledMinutes / (60 * scale);
    }

    private static double hemisphere(Fields fields, boolean hasAngle, double deg, char positive, char negative) {
        if (!fields.letter()) {
            if (hasAngle) {
                fields.refuse();
            }
            return deg;
        }
        char side = fields.letterRead();
        if (side != positive && side != negative) {
            fields.refuse();
        }
        return side == negative ? -deg : deg;
    }
}
