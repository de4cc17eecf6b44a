package evenfall.sim.sensor;

import evenfall.sim.chance.Chance;

/**
 * A turbine or magnetic flow meter, or a wheel with teeth: one pulse for each equal part of what passes.
 *
 * <p>The place between two pulses is carried on exactly, so no volume is lost between steps. What is given on is the count and the
 * moment of the last pulse.
 */
public final class PulseMeter {
    private static final long MASK = 0xffffffffL;

    private final double pulsesPerUnit;
    private final double jitterPeriods;
    private final Chance chance;
    private double phase;
    private long count;
    private double lastEdgeUs = Double.NEGATIVE_INFINITY;

    /**
     * @param pulsesPerUnit true pulses per cubic metre (or metre), above 0
     * @param jitterPeriods standard deviation of a pulse's moment, in periods: blades are not alike
     * @param startCount what it has counted before the run, 0 to 2³² − 1
     */
    public PulseMeter(double pulsesPerUnit, double jitterPeriods, long startCount, Chance chance) {
        this.pulsesPerUnit = pulsesPerUnit;
        this.jitterPeriods = jitterPeriods;
        this.chance = chance;
        this.count = startCount;
        this.phase = chance.nextDouble();
    }

    /**
     * Lets something pass evenly during a step.
     *
     * @param startUs when the step begins, µs of the run
     * @param dtUs how long it is, µs
     * @param amount what passes, m³ (or m), 0 or more
     */
    public void pass(double startUs, double dtUs, double amount) {
        double grown = amount * pulsesPerUnit;
        double end = phase + grown;
        double edges = Math.floor(end);
        if (edges >= 1) {
            count = count + (long) edges & MASK;
            double periodUs = dtUs / grown;
            double edgeUs = startUs + (edges - phase) * periodUs + jitterPeriods * periodUs * chance.nextGaussian();
            lastEdgeUs = Math.max(lastEdgeUs, Math.max(startUs, Math.min(startUs + dtUs, edgeUs)));
        }
        phase = end - edges;
    }

    /** Pulses so far, 0 to 2³² − 1, running over. */
    public long count() {
        return count;
    }

    /** Whether a pulse has come in this run, so that {@link #lastEdgeUs} means something. */
    public boolean hasEdge() {
        return lastEdgeUs != Double.NEGATIVE_INFINITY;
    }

    /** When the last pulse came, µs of the run. */
    public double lastEdgeUs() {
        return lastEdgeUs;
    }
}
