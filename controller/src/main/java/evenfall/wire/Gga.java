package evenfall.wire;

/**
 * GGA, fix data, from any talker.
 *
 * <p>A view that is filled again with the next GGA: valid only during the call that handed it over.
 */
public final class Gga {

    private final UtcFields utc = new UtcFields();
    private final PositionFields position = new PositionFields();
    private boolean hasQuality;
    private int quality;
    private boolean hasSatellites;
    private int satellites;
    private boolean hasHdop;
    private double hdop;
    private boolean hasAltitude;
    private double altitudeM;

    Gga() {}

    boolean read(Fields fields) {
        utc.clear();
        utc.readTime(fields);
        position.read(fields);
        hasQuality = fields.whole(8);
        quality = (int) fields.mantissa();
        hasSatellites = fields.whole(255);
        satellites = (int) fields.mantissa();
        hasHdop = fields.unsigned();
        if (hasHdop) {
            hdop = fields.value();
        }
        hasAltitude = fields.signed();
        if (hasAltitude) {
            altitudeM = fields.value();
        }
        // Its unit is always metres; height of the geoid, age and station of the corrections are not read.
        if (fields.more()) {
            fields.letterOrEmpty('M');
        }
        fields.skipRest();
        return fields.good();
    }

    /** Returns whether the time of day is there. */
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

    /** Returns whether the quality is there. */
    public boolean hasQuality() {
        return hasQuality;
    }

    /**
     * Returns the fix quality: 0 none, 1 GPS, 2 differential, 3 PPS, 4 RTK, 5 float RTK, 6 estimated, 7 manual, 8
     * simulation (E. S. Raymond, NMEA Revealed, 2019).
     *
     * @throws IllegalStateException when the quality is empty
     */
    public int quality() {
        if (!hasQuality) {
            throw Absent.of("quality");
        }
        return quality;
    }

    /** Returns whether the number of satellites is there. */
    public boolean hasSatellites() {
        return hasSatellites;
    }

    /**
     * Returns how many satellites the fix uses; many receivers print 12 at most.
     *
     * @throws IllegalStateException when the number is empty
     */
    public int satellites() {
        if (!hasSatellites) {
            throw Absent.of("number of satellites");
        }
        return satellites;
    }

    /** Returns whether the horizontal dilution of precision is there. */
    public boolean hasHdop() {
        return hasHdop;
    }

    /**
     * Returns the horizontal dilution of precision, a bare ratio; receivers print 99 and the like for none.
     *
     * @throws IllegalStateException when it is empty
     */
    public double hdop() {
        if (!hasHdop) {
            throw Absent.of("horizontal dilution of precision");
        }
        return hdop;
    }

    /** Returns whether the altitude is there. */
    public boolean hasAltitude() {
        return hasAltitude;
    }

    /**
     * Returns the altitude of the antenna in metres above mean sea level.
     *
     * @throws IllegalStateException when the altitude is empty
     */
    public double altitudeM() {
        if (!hasAltitude) {
            throw Absent.of("altitude");
        }
        return altitudeM;
    }
}
