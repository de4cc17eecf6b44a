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
    private double shiftPa;
    private double stretch = 1;
    private boolean broken;
    private boolean held;
    private long lastUa;

    public PressureTransmitter(Spec spec, Chance chance) {
        this.spec = spec;
        this.chance = chance;
    }

    /**
     * @param pressurePa true pressure, Pa
     * @return loop current, µA
     */
    public long currentUa(double pressurePa) {
        double readsPa = stretch * pressurePa + spec.offsetPa() + shiftPa + spec.noisePa() * chance.nextGaussian();
        double currentA =
                spec.lowA() + (readsPa - spec.lowPa()) / (spec.highPa() - spec.lowPa()) * (spec.highA() - spec.lowA());
        if (!held) {
            lastUa = Math.round(1e6 * Math.max(LEAST_A, Math.min(MOST_A, currentA)));
        }
        return broken ? 0 : lastUa;
    }

    /** @param pascals how much more than before it reads too high, Pa; 0 makes it whole */
    public void shift(double pascals) {
        shiftPa = pascals;
    }

    /** @param factor what it shows over what is, its span being wrong; 1 makes it whole */
    public void stretch(double factor) {
        stretch = factor;
    }

    /** The loop is broken: no current flows. */
    public void breakLoop(boolean on) {
        broken = on;
    }

    /** Its port is plugged: it goes on showing the pressure that it saw last. */
    public void hold(boolean on) {
        held = on;
    }
}
