package evenfall.sense;

/**
 * Height and rate at each sensor of a boom at one moment. Whoever looks at all of them twenty times a second owns one and has it filled
 * again at each moment: as many quantities would be a third of all that the core allocates.
 */
public final class HeightReadings {
    final boolean[] known;
    final double[] heightM;
    final double[] heightVariance;
    final double[] rateMps;
    final double[] rateVariance;

    /** Variance of the height that streams meet the ground from, what the rate adds during their flight included; by {@link BoomMotion} only. */
    final double[] meetsVariance;

    /** Of which none is known yet. */
    public HeightReadings(int sensors) {
        known = new boolean[sensors];
        heightM = new double[sensors];
        heightVariance = new double[sensors];
        rateMps = new double[sensors];
        rateVariance = new double[sensors];
        meetsVariance = new double[sensors];
    }

    /** Whether the height at a sensor is known. */
    public boolean isKnown(int sensor) {
        return known[sensor];
    }
}
