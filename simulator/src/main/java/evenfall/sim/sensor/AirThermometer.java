package evenfall.sim.sensor;

import evenfall.sim.chance.Chance;

/** A thermometer in the shade of the boom. */
public final class AirThermometer {
    /**
     * @param offsetC how much too warm it reads, °C
     * @param noiseC standard deviation of one reading, °C
     */
    public record Spec(double offsetC, double noiseC) {}

    private final Spec spec;
    private final Chance chance;
    private double warmC;

    public AirThermometer(Spec spec, Chance chance) {
        this.spec = spec;
        this.chance = chance;
    }

    /** Its reading in hundredths of a degree Celsius. */
    public long centiDegC(double airC) {
        return Math.round(100 * (airC + spec.offsetC() + warmC + spec.noiseC() * chance.nextGaussian()));
    }

    /** @param degrees how much more than before it reads too warm, °C: the sun on it; 0 makes it whole */
    public void warm(double degrees) {
        warmC = degrees;
    }
}
