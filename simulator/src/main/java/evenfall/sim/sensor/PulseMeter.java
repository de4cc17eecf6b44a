package evenfall.sim.sensor;

import evenfall.sim.chance.Chance;
import org.jspecify.annotations.Nullable;

/**
 * A turbine or magnetic flow meter, or a wheel with teeth: one pulse for each equal part of what passes.
 *
 * <p>The place between two pulses is carried on exactly, so no volume is lost between steps. What is given on is the count and the
 * moment of the last pulse.
 *
 * <p>A turbine turns too slowly where little flows, and stands where less does: below {@code q0} it gives nothing, above it
 * {@code 1 − (q0/q)²} of its pulses. A magnetic meter and a wheel have a {@code q0} of 0. The form is a choice of ours.
 */
public final class PulseMeter {
    private static final long MASK = 0xffffffffL;

    private final double pulsesPerUnit;
    private final double jitterPeriods;
    private final Chance chance;
    private final double leastPerS;
    private double factor = 1;
    private boolean held;
    private double humHz;
    private @Nullable Chance humChance;
    private double phase;
    private long count;
    private double lastEdgeUs = Double.NEGATIVE_INFINITY;

    /**
     * @param pulsesPerUnit true pulses per cubic metre (or metre), above 0
     * @param jitterPeriods standard deviation of a pulse's moment, in periods: blades are not alike
     * @param startCount what it has counted before the run, 0 to 2³² − 1
     */
    public PulseMeter(double pulsesPerUnit, double jitterPeriods, long startCount, Chance chance) {
        this(pulsesPerUnit, jitterPeriods, startCount, 0, chance);
    }

    /**
     * @param pulsesPerUnit true pulses per cubic metre (or metre), above 0
     * @param jitterPeriods standard deviation of a pulse's moment, in periods: blades are not alike
     * @param startCount what it has counted before the run, 0 to 2³² − 1
     * @param leastPerS where a turbine begins to turn, m³/s; 0 for what gives pulses however little passes
     */
    public PulseMeter(double pulsesPerUnit, double jitterPeriods, long startCount, double leastPerS, Chance chance) {
        this.leastPerS = leastPerS;
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
        double grown = held ? 0 : amount * pulsesPerUnit * factor;
        if (leastPerS > 0 && grown > 0) {
            double slow = leastPerS * dtUs * 1e-6 / amount;
            grown *= Math.max(0, 1 - slow * slow);
        }
        if (humHz > 0 && humChance != null) {
            grown += 2 * humChance.nextDouble() * humHz * dtUs * 1e-6;
        }
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

    /** @param times pulses that it gives over what it gave before; 1 makes it whole */
    public void factor(double times) {
        factor = times;
    }

    /** It gives no pulses: jammed, or its lead is off. */
    public void hold(boolean on) {
        held = on;
    }

    /**
     * Pulses that nothing has caused, from a lead beside a coil.
     *
     * @param hertz how many a second on average; 0 and it is quiet
     * @param luck for when they come
     */
    public void hum(double hertz, Chance luck) {
        humHz = hertz;
        humChance = luck;
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
