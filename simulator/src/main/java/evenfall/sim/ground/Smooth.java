package evenfall.sim.ground;

/** Polynomial shapes without a kink: value and slope are continuous everywhere. */
final class Smooth {

    private Smooth() {}

    /** 0 up to t = 0, 1 from t = 1, level at both ends. */
    static double step(double t) {
        double u = Math.max(0.0, Math.min(1.0, t));
        return u * u * (3.0 - 2.0 * u);
    }

    /** 1 at t = 0, falling to 0 at t = ±1 and beyond. */
    static double bump(double t) {
        double u = Math.max(0.0, 1.0 - t * t);
        return u * u;
    }

    static void requirePositive(double value, String what) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(what + " must be above 0, not " + value);
        }
    }

    static void requireNotNegative(double value, String what) {
        if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(what + " must be 0 or above, not " + value);
        }
    }
}
