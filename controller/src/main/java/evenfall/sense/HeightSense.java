package evenfall.sense;

/**
 * One ultrasonic height sensor: echo time to the height of the outlets beside it.
 *
 * <p>Distance is half the echo time times the speed of sound, {@code 331.3 · √(1 + T/273.15)} m/s with T in °C (dry air; the form
 * that general acoustics pages give). The middle one of the last three echoes counts, which rids it of single spikes for the price
 * of one sentence's delay.
 */
public final class HeightSense {
    /** Echoes from nearer or farther than this are no ground under a boom, m. Our choice, within what such sensors reach. */
    static final double NEAREST_M = 0.05;

    static final double FARTHEST_M = 3.0;

    private final double aboveOutletM;
    private final double[] last = new double[3];
    private int held;
    private long heardUs = -1;
    private long echoUs = -1;
    private Unknown fault = Unknown.NOT_YET;

    /**
     * @param aboveOutletM how far the sensor's face is above the outlets, m
     */
    public HeightSense(double aboveOutletM) {
        this.aboveOutletM = aboveOutletM;
    }

    /**
     * The speed of sound in dry air.
     *
     * @param airC temperature, °C
     * @return m/s
     */
    public static double soundMps(double airC) {
        return 331.3 * Math.sqrt(1 + airC / 273.15);
    }

    /**
     * Takes an echo.
     *
     * @param timeUs event time of arrival, µs
     * @param roundTripUs echo time there and back, µs
     * @param airC air temperature, °C
     */
    public void onEcho(long timeUs, long roundTripUs, double airC) {
        heardUs = timeUs;
        double distanceM = 0.5e-6 * roundTripUs * soundMps(airC);
        if (distanceM < NEAREST_M || distanceM > FARTHEST_M) {
            fault = Unknown.OUT_OF_RANGE;
            return;
        }
        last[2] = last[1];
        last[1] = last[0];
        last[0] = distanceM - aboveOutletM;
        held = Math.min(held + 1, 3);
        echoUs = timeUs;
    }

    /** The sensor was asked and heard nothing back. */
    public void onNoEcho(long timeUs) {
        heardUs = timeUs;
        fault = Unknown.NO_ECHO;
    }

    /**
     * Height of the outlets over what the sensor sees.
     *
     * @param nowUs event time, µs
     * @param silenceUs without a good echo for so long it is not known, µs
     * @return m
     */
    public Quantity heightM(long nowUs, long silenceUs) {
        if (heardUs < 0) {
            return Quantity.unknown(Unknown.NOT_YET, -1);
        }
        if (nowUs - heardUs > silenceUs) {
            return forget(Unknown.SILENT, nowUs);
        }
        if (echoUs < 0 || nowUs - echoUs > silenceUs) {
            return forget(fault, nowUs);
        }
        return Quantity.known(middle(), nowUs - echoUs);
    }

    private Quantity forget(Unknown reason, long nowUs) {
        // What was measured before a silence must not be the middle of what comes after it.
        held = 0;
        return Quantity.unknown(reason, nowUs - Math.max(heardUs, echoUs));
    }

    private double middle() {
        if (held < 3) {
            return last[0];
        }
        double low = Math.min(last[0], last[1]);
        double high = Math.max(last[0], last[1]);
        return Math.max(low, Math.min(high, last[2]));
    }
}
