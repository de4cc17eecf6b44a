package evenfall.sense;

/** How warm the air is, for the speed of sound: as measured, or as the rig says where nothing is measured or the thermometer is silent. */
public final class AirSense {
    /** A thermometer speaks once a second, and air does not change in ten. Our choice. */
    private static final long SILENCE_US = 10_000_000;

    private final double fixedC;
    private double measuredC;
    private long heardUs = -1;

    /** @param fixedC the rig's, °C */
    public AirSense(double fixedC) {
        this.fixedC = fixedC;
    }

    /**
     * @param timeUs event time, µs
     * @param airC °C
     */
    public void onTemperature(long timeUs, double airC) {
        heardUs = timeUs;
        measuredC = airC;
    }

    /** Whether the temperature at a moment is a measured one. */
    public boolean isMeasured(long nowUs) {
        return heardUs >= 0 && nowUs - heardUs <= SILENCE_US;
    }

    /** The temperature to take at a moment, °C. */
    public double airC(long nowUs) {
        return isMeasured(nowUs) ? measuredC : fixedC;
    }
}
