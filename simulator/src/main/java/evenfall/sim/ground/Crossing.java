package evenfall.sim.ground;

/**
 * Where and how a long feature lies across the pass: a straight line, perhaps only a stretch of it.
 *
 * <p>Without skew the line runs square to the travel and both wings meet it at once. With a positive
 * skew the left wing meets it first. With a skew of 90° it runs along the pass.
 */
public final class Crossing {

    private final double xM;
    private final double yM;
    private final double cos;
    private final double sin;
    private final double leftM;
    private final double rightM;
    private final double fadeM;

    private Crossing(double xM, double yM, double cos, double sin, double leftM, double rightM, double fadeM) {
        this.xM = xM;
        this.yM = yM;
        this.cos = cos;
        this.sin = sin;
        this.leftM = leftM;
        this.rightM = rightM;
        this.fadeM = fadeM;
    }

    /** Square to the travel at this distance along the pass. */
    public static Crossing at(double xM) {
        return through(xM, 0.0, 0.0);
    }

    /**
     * Skewed, meeting the pass's centre line at this distance.
     *
     * @param skewRad angle out of square, positive when the left wing meets it first
     */
    public static Crossing at(double xM, double skewRad) {
        return through(xM, 0.0, skewRad);
    }

    /** Skewed, through this point. */
    public static Crossing through(double xM, double yM, double skewRad) {
        return new Crossing(
                xM,
                yM,
                StrictMath.cos(skewRad),
                StrictMath.sin(skewRad),
                Double.NEGATIVE_INFINITY,
                Double.POSITIVE_INFINITY,
                1.0);
    }

    /**
     * The same line, but only this stretch of it, measured along the line from the point it goes through,
     * to the right; outside, the feature fades away over a length.
     *
     * @param fadeM length over which it fades, above 0
     * @throws IllegalArgumentException when the stretch is empty or the fade not above 0
     */
    public Crossing between(double fromM, double toM, double fadeM) {
        if (!(fromM < toM)) {
            throw new IllegalArgumentException("stretch from " + fromM + " m to " + toM + " m is empty");
        }
        Smooth.requirePositive(fadeM, "fade length, m,");
        return new Crossing(xM, yM, cos, sin, fromM, toM, fadeM);
    }

    /** Distance past the line in the direction of travel, measured square to the line, m. */
    double pastM(double x, double y) {
        return (x - xM) * cos - (y - yM) * sin;
    }

    /** How much of the feature is there: 1 on its stretch, 0 well outside. */
    double share(double x, double y) {
        if (leftM == Double.NEGATIVE_INFINITY && rightM == Double.POSITIVE_INFINITY) {
            return 1.0;
        }
        double along = (x - xM) * sin + (y - yM) * cos;
        return Smooth.step(1.0 - (leftM - along) / fadeM) * Smooth.step(1.0 - (along - rightM) / fadeM);
    }
}
