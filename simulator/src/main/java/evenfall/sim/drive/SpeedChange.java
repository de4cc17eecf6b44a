package evenfall.sim.drive;

/**
 * The driver goes for another speed from a moment and a place on, whichever comes later.
 *
 * @param atS moment, s from the start; 0 when it goes by place
 * @param atM distance along the path, m; 0 when it goes by time
 * @param speedMps the speed to go for, m/s, 0 or above
 */
public record SpeedChange(double atS, double atM, double speedMps) {

    public SpeedChange {
        if (!(speedMps >= 0 && speedMps < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("speed, m/s, must be 0 or above, not " + speedMps);
        }
    }

    /** From this moment on. */
    public static SpeedChange atS(double timeS, double speedMps) {
        return new SpeedChange(timeS, 0, speedMps);
    }

    /** From this place on. */
    public static SpeedChange atM(double distanceM, double speedMps) {
        return new SpeedChange(0, distanceM, speedMps);
    }
}
