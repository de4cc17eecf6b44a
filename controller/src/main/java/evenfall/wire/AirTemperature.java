package evenfall.wire;

/** {@code $PEVFT}: air temperature at the boom, for the speed of sound. */
public final class AirTemperature extends HubSentence {

    private static final long LOW_CENTIDEG = -27_315; // absolute zero
    private static final long HIGH_CENTIDEG = 32_767; // a signed 16-bit register's end

    private boolean hasTemperature;
    private long temperatureCentidegC;

    AirTemperature() {}

    @Override
    void readRest(Fields fields) {
        hasTemperature = fields.signedWhole(LOW_CENTIDEG, HIGH_CENTIDEG);
        temperatureCentidegC = fields.mantissa();
    }

    /** Returns whether the hub could read the sensor. */
    public boolean hasTemperature() {
        return hasTemperature;
    }

    /**
     * Returns the air temperature in hundredths of a degree Celsius, −27 315 to 32 767.
     *
     * @throws IllegalStateException when the hub could not read it
     */
    public long temperatureCentidegC() {
        if (!hasTemperature) {
            throw Absent.of("temperature");
        }
        return temperatureCentidegC;
    }
}
