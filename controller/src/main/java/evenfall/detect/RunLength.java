package evenfall.detect;

/**
 * How long a one-sided cumulative sum of independent normal looks of standard deviation 1 runs until it passes its decision interval, by
 * Siegmund's approximation:
 *
 * <p>{@code ARL = (exp(−2Δb) + 2Δb − 1) / (2Δ²)} with {@code Δ = shift − k} and {@code b = h + 1.166}; {@code b²} for {@code Δ = 0}
 * (Siegmund, Sequential Analysis, 1985, as textbooks of statistical quality control quote it; from memory). Its test holds it against
 * the Markov chain of Brook and Evans (Biometrika 59, 1972).
 */
public final class RunLength {
    /** Mean overshoot of a normal walk over a bound, both ends together: 2 · 0.583. */
    private static final double OVERSHOOT = 1.166;

    private static final int ROUNDS = 60;

    private RunLength() {}

    /**
     * Mean number of looks from an empty sum to the alarm.
     *
     * @param k reference, in standard deviations
     * @param h decision interval, in standard deviations, above 0
     * @param shift mean of the looks, in standard deviations; 0 where nothing has changed
     */
    public static double mean(double k, double h, double shift) {
        double drift = shift - k;
        double b = h + OVERSHOOT;
        if (Math.abs(drift * b) < 1e-6) {
            return b * b;
        }
        return (StrictMath.exp(-2 * drift * b) + 2 * drift * b - 1) / (2 * drift * drift);
    }

    /**
     * The decision interval that gives a mean number of looks between false alarms.
     *
     * @param k reference, in standard deviations, above 0; the approximation is good to a few percent up to 1
     * @param looks wanted mean number of looks between false alarms, so many that the interval is above 0
     */
    public static double interval(double k, double looks) {
        // exp(y) − y − 1 = c with y = 2 k b: Newton from above, where the left side is convex, so it never passes the
        // root.
        double c = 2 * k * k * looks;
        double y = StrictMath.log(c + 2) + StrictMath.log(StrictMath.log(c + 3) + 1) + 1;
        for (int round = 0; round < ROUNDS; round++) {
            double e = StrictMath.exp(y);
            double step = (e - y - 1 - c) / (e - 1);
            y -= step;
            if (Math.abs(step) < 1e-12 * y) {
                break;
            }
        }
        double h = y / (2 * k) - OVERSHOOT;
        if (!(h > 0)) {
            throw new IllegalArgumentException("so short a time between false alarms needs no sum: " + looks);
        }
        return h;
    }
}
