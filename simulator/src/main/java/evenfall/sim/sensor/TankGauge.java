package evenfall.sim.sensor;

import evenfall.sim.chance.Chance;
import java.util.List;

/**
 * A level gauge in a tank whose liquid sloshes: an oscillation at the tank's own frequency, kept going by the ground, and damped. It is
 * asked five times a second.
 */
public final class TankGauge {
    private static final double STEP_S = 0.2;

    private static final long MOST_COUNTS = 65_535;

    /**
     * What it really does.
     *
     * @param table by ascending counts, volumes all ascending or all descending; straight lines between; two marks or more
     * @param startM3 what is in the tank at the start, m³
     * @param factor what it shows over what is there; 1 is right
     * @param sloshM3 standard deviation of what sloshing adds, m³
     * @param sloshHz the tank's own frequency, Hz, below 2.5
     * @param damping ratio, above 0, below 1
     */
    public record Spec(
            List<Mark> table, double startM3, double factor, double sloshM3, double sloshHz, double damping) {
        public Spec {
            table = List.copyOf(table);
        }
    }

    /**
     * @param counts what it gives
     * @param volumeM3 when so much is in the tank, m³
     */
    public record Mark(double counts, double volumeM3) {}

    private final Spec spec;
    private final Chance chance;
    private final double first;
    private final double second;
    private final double push;
    private double slosh;
    private double sloshBefore;

    public TankGauge(Spec spec, Chance chance) {
        this.spec = spec;
        this.chance = chance;
        double decay = StrictMath.exp(-spec.damping() * 2 * Math.PI * spec.sloshHz() * STEP_S);
        first = 2 * decay * StrictMath.cos(2 * Math.PI * spec.sloshHz() * STEP_S);
        second = -decay * decay;
        // Variance of a stationary process of that form (Box and Jenkins, from memory).
        double gain = (1 - second) / ((1 + second) * ((1 - second) * (1 - second) - first * first));
        push = spec.sloshM3() / Math.sqrt(gain);
    }

    /**
     * @param goneM3 what has left the tank since the start, m³
     * @return its counts
     */
    public long counts(double goneM3) {
        double now = first * slosh + second * sloshBefore + push * chance.nextGaussian();
        sloshBefore = slosh;
        slosh = now;
        double shownM3 = spec.factor() * Math.max(0, spec.startM3() - goneM3) + slosh;
        return Math.max(0, Math.min(MOST_COUNTS, Math.round(countsAt(shownM3))));
    }

    /** By the marks on either side; beyond the ends the last line goes on. */
    private double countsAt(double volumeM3) {
        List<Mark> table = spec.table();
        boolean rises = table.get(1).volumeM3() > table.get(0).volumeM3();
        int above = 1;
        while (above < table.size() - 1 && rises == table.get(above).volumeM3() < volumeM3) {
            above++;
        }
        Mark from = table.get(above - 1);
        Mark to = table.get(above);
        double share = (volumeM3 - from.volumeM3()) / (to.volumeM3() - from.volumeM3());
        return from.counts() + share * (to.counts() - from.counts());
    }
}
