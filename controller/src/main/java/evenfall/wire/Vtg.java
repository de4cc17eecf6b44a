package evenfall.wire;

/**
 * VTG, course and speed over ground, from any talker, in its three forms: with mode, without mode, and the oldest of
 * four numbers without unit letters.
 *
 * <p>A view that is filled again with the next VTG: valid only during the call that handed it over.
 */
public final class Vtg {

    private static final int FIELDS_WITHOUT_LETTERS = 4;

    private boolean hasSpeed;
    private double speedMps;
    private boolean hasCourse;
    private double courseDeg;
    private char mode;

    Vtg() {}

    boolean read(Fields fields) {
        boolean letters = fields.left() != FIELDS_WITHOUT_LETTERS;
        mode = 0;
        hasCourse = fields.unsigned();
        if (hasCourse) {
            fields.atMost(360);
            courseDeg = fields.value();
        }
        unit(fields, letters, 'T');
        fields.skip(); // course from magnetic north
        unit(fields, letters, 'M');
        hasSpeed = fields.unsigned();
        if (hasSpeed) {
            speedMps = Speed.fromKnots(fields);
        }
        unit(fields, letters, 'N');
        if (fields.unsigned()) {
            double fromKmh = Speed.fromKilometresPerHour(fields);
            if (!hasSpeed) {
                speedMps = fromKmh;
                hasSpeed = true;
            }
        }
        unit(fields, letters, 'K');
        if (fields.more() && fields.capital()) {
            mode = fields.letterRead();
        }
        fields.skipRest();
        return fields.good();
    }

    private static void unit(Fields fields, boolean letters, char letter) {
        if (letters) {
            fields.letterOrEmpty(letter);
        }
    }

    /** Returns whether a speed is there, in knots or in kilometres per hour. */
    public boolean hasSpeed() {
        return hasSpeed;
    }

    /**
     * Returns the speed over ground in metres per second, from the knots where they are given, since they carry more
     * digits, else from the kilometres per hour.
     *
     * @throws IllegalStateException when the speed is empty
     */
    public double speedMps() {
        if (!hasSpeed) {
            throw Absent.of("speed");
        }
        return speedMps;
    }

    /** Returns whether the course is there; many receivers leave it empty at a standstill. */
    public boolean hasCourse() {
        return hasCourse;
    }

    /**
     * Returns the course over ground in degrees from true north, 0 to 360.
     *
     * @throws IllegalStateException when the course is empty
     */
    public double courseDeg() {
        if (!hasCourse) {
            throw Absent.of("course");
        }
        return courseDeg;
    }

    /** Returns whether the mode is there. */
    public boolean hasMode() {
        return mode != 0;
    }

    /**
     * Returns the mode letter, as {@link Rmc#mode()}; N says that the numbers are not to be trusted.
     *
     * @throws IllegalStateException when the mode is empty
     */
    public char mode() {
        if (mode == 0) {
            throw Absent.of("mode");
        }
        return mode;
    }
}
