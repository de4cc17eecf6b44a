package evenfall.sense;

import org.jspecify.annotations.Nullable;

/**
 * Where the receiver's antenna was last heard to be, which way it went, and how good the fix was. RMC says it all where it has a mode
 * (NMEA 0183 from 2.3 on); before that the quality of the latest GGA tells how good.
 */
public final class PositionSense {
    /** How good a fix is, from the worst to the best. */
    public enum Grade {
        /** Of its own, or no word on how good it is. */
        PLAIN,
        /** With corrections, or by the carrier's phase with cycles not yet fixed. */
        DIFFERENTIAL,
        /** By the carrier's phase, whole cycles fixed. */
        RTK
    }

    /**
     * One fix.
     *
     * @param latitudeDeg degrees, north positive
     * @param longitudeDeg degrees, east positive
     * @param courseRad course over ground from true north, clockwise, rad
     * @param speedMps ground speed, m/s
     * @param grade how good it is
     * @param heardUs event time of its arrival, µs
     */
    public record Fix(
            double latitudeDeg, double longitudeDeg, double courseRad, double speedMps, Grade grade, long heardUs) {}

    /** NMEA 0183's quality of a GGA: 2 differential, 4 real-time kinematic, 5 the same with float cycles. */
    private static final int DIFFERENTIAL = 2;

    private static final int RTK_FIXED = 4;
    private static final int RTK_FLOAT = 5;

    private @Nullable Fix fix;
    private long heardUs = -1;
    private double courseRad = Double.NaN;
    private int quality = -1;

    /** A GGA's quality, 0 to 8. */
    public void onQuality(int ggaQuality) {
        quality = ggaQuality;
    }

    /** An RMC without a fix or without a position. */
    public void onNoFix(long timeUs) {
        heardUs = timeUs;
        fix = null;
        courseRad = Double.NaN;
    }

    /**
     * An RMC with a fix, a position and a speed.
     *
     * @param timeUs event time of its arrival, µs
     * @param latitudeDeg degrees, north positive
     * @param longitudeDeg degrees, east positive
     * @param courseDeg from true north, clockwise; NaN where the receiver says none, as many do at a standstill: the last one holds
     * @param speedMps m/s
     * @param mode RMC's mode letter; 0 where it has none
     */
    public void onFix(
            long timeUs, double latitudeDeg, double longitudeDeg, double courseDeg, double speedMps, char mode) {
        heardUs = timeUs;
        if (!Double.isNaN(courseDeg)) {
            courseRad = StrictMath.toRadians(courseDeg);
        }
        fix = Double.isNaN(courseRad)
                ? null
                : new Fix(latitudeDeg, longitudeDeg, courseRad, speedMps, grade(mode), timeUs);
    }

    private Grade grade(char mode) {
        return switch (mode) {
            case 'R', 'P' -> Grade.RTK;
            case 'D', 'F' -> Grade.DIFFERENTIAL;
            case 0 -> byQuality();
            default -> Grade.PLAIN;
        };
    }

    private Grade byQuality() {
        if (quality == RTK_FIXED) {
            return Grade.RTK;
        }
        return quality == DIFFERENTIAL || quality == RTK_FLOAT ? Grade.DIFFERENTIAL : Grade.PLAIN;
    }

    /**
     * The newest fix; null where it is not known, for the reason that {@link #unknown} gives.
     *
     * @param nowUs event time, µs
     * @param silenceUs older than this it counts for nothing, µs
     */
    public @Nullable Fix fix(long nowUs, long silenceUs) {
        return fix != null && nowUs - fix.heardUs() <= silenceUs ? fix : null;
    }

    /** Why there is no fix; null where there is one. */
    public @Nullable Unknown unknown(long nowUs, long silenceUs) {
        if (fix(nowUs, silenceUs) != null) {
            return null;
        }
        if (heardUs < 0) {
            return Unknown.NOT_YET;
        }
        return nowUs - heardUs > silenceUs ? Unknown.SILENT : Unknown.NO_FIX;
    }
}
