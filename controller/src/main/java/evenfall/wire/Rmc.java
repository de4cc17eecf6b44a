package evenfall.wire;

/**
 * RMC, recommended minimum GNSS data, from any talker.
 *
 * <p>A view that is filled again with the next RMC: valid only during the call that handed it over. Without a fix the
 * receiver may still print numbers, and what they are worth is its secret: ask {@link #hasFix()} first.
 */
public final class Rmc {

    private final UtcFields utc = new UtcFields();
    private final PositionFields position = new PositionFields();
    private boolean hasFix;
    private boolean hasSpeed;
    private double speedMps;
    private boolean hasCourse;
    private double courseDeg;
    private char mode;

    Rmc() {}

    boolean read(Fields fields) {
        utc.clear();
        utc.readTime(fields);
        hasFix = readStatus(fields);
        position.read(fields);
        hasSpeed = fields.unsigned();
        if (hasSpeed) {
            speedMps = Speed.fromKnots(fields);
        }
        hasCourse = fields.unsigned();
        if (hasCourse) {
            fields.atMost(360);
            courseDeg = fields.value();
        }
        utc.readDate(fields);
        // Magnetic variation and its side came before the mode and nobody reads them.
        mode = 0;
        if (fields.more()) {
            fields.skip();
        }
        if (fields.more()) {
            fields.skip();
        }
        if (fields.more() && fields.capital()) {
            mode = fields.letterRead();
        }
        fields.skipRest();
        return fields.good();
    }

    private static boolean readStatus(Fields fields) {
        if (!fields.letter()) {
            return false;
        }
        char status = fields.letterRead();
        if (status != 'A' && status != 'V') {
            fields.refuse();
        }
        return status == 'A';
    }

    /** Returns whether the receiver says that its data are good (status A). */
    public boolean hasFix() {
        return hasFix;
    }

    /** Returns whether both time and date are there. */
    public boolean hasUtc() {
        return utc.hasDateAndTime();
    }

    /**
     * Returns the time of the fix in milliseconds since 1970-01-01 UTC. Two-digit years 80 to 99 are of the last
     * century.
     *
     * @throws IllegalStateException when time or date is empty
     */
    public long utcEpochMs() {
        if (!utc.hasDateAndTime()) {
            throw Absent.of("date and time");
        }
        return utc.epochMs();
    }

    /** Returns whether the time of day is there, with or without a date. */
    public boolean hasTimeOfDay() {
        return utc.hasTime();
    }

    /**
     * Returns the time of the fix in milliseconds since midnight UTC, 0 to 86 400 999 (leap second).
     *
     * @throws IllegalStateException when the time is empty
     */
    public int timeOfDayMs() {
        if (!utc.hasTime()) {
            throw Absent.of("time");
        }
        return utc.timeOfDayMs();
    }

    /** Returns whether latitude and longitude are there. */
    public boolean hasPosition() {
        return position.present();
    }

    /**
     * Returns the latitude in degrees, north positive, −90 to 90.
     *
     * @throws IllegalStateException when the position is empty
     */
    public double latitudeDeg() {
        if (!position.present()) {
            throw Absent.of("position");
        }
        return position.latitudeDeg();
    }

    /**
     * Returns the longitude in degrees, east positive, −180 to 180.
     *
     * @throws IllegalStateException when the position is empty
     */
    public double longitudeDeg() {
        if (!position.present()) {
            throw Absent.of("position");
        }
        return position.longitudeDeg();
    }

    /** Returns whether the speed is there. */
    public boolean hasSpeed() {
        return hasSpeed;
    }

    /**
     * Returns the speed over ground in metres per second, 0 or more.
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

    /** Returns whether the mode is there; sentences before NMEA 2.3 end without it. */
    public boolean hasMode() {
        return mode != 0;
    }

    /**
     * Returns the mode letter: A autonomous, D differential, E estimated, F float RTK, M manual, N none, P precise, R
     * RTK, S simulator.
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
