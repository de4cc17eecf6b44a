package evenfall.sim.sensor;

import evenfall.sim.chance.Chance;

/** A pressure transmitter on a 4 to 20 mA loop, linear between two points, with an offset and noise of its own. */
public final class PressureTransmitter {
    /** A healthy transmitter keeps its current within 3.8 and 20.5 mA (NAMUR NE 43, from memory). */
    private static final double LEAST_A = 0.0038;

    private static final double MOST_A = 0.0205;

    /**
     * What it really does.
     *
     * @param lowA current at the low point, A
     * @param highA current at the high point, A
     * @param lowPa pressure at the low point, Pa
     * @param highPa pressure at the high point, Pa
     * @param offsetPa how much too high it reads, Pa
     * @param noisePa standard deviation of one reading, Pa
     */
    public record Spec(double lowA, double highA, double lowPa, double highPa, double offsetPa, double noisePa) {}

    private final Spec spec;
    private final Chance chance;

    public PressureTransmitter(Spec spec, Chance chance) {
        this.spec = spec;
        this.chance = chance;
    }

    /**
     * @param pressurePa true pressure, Pa
     * @return loop current, µA
     */
    public long currentUa(double pressurePa) {
        double readsPa = pressurePa + spec.offsetPa() + spec.noisePa() * chance.nextGaussian();
        double currentA =
                spec.lowA() + (readsPa - spec.lowPa()) / (spec.highPa() - spec.lowPa()) * (spec.highA() - spec.lowA());
        return Math.round(1e6 * Math.max(LEAST_A, Math.min(MOST_A, currentA)));
    }
}
