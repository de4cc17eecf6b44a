package evenfall.sense;

/**
 * A wheel sensor's pulses, counted as {@link FlowSense} counts a meter's, and handed to the speed as what they say of the middle of their
 * stretch.
 */
public final class WheelSense {
    /** Two or three sentences: as short as a wheel of few teeth allows at walking pace. Our choice. */
    static final long WINDOW_US = 200_000;

    private final double pulsesPerM;
    private final SpeedSense speed;
    private final PulseTrain train = new PulseTrain(WINDOW_US);

    /**
     * @param pulsesPerM as the rig has it, above 0
     * @param speed takes what the wheel says
     */
    public WheelSense(double pulsesPerM, SpeedSense speed) {
        this.pulsesPerM = pulsesPerM;
        this.speed = speed;
    }

    /**
     * Takes one sentence.
     *
     * @param arrivedUs event time of its arrival, µs
     * @param timeUs event time of its tick, µs
     * @param tick hub time of the sentence, µs, 32 bits
     * @param pulses cumulative count, 32 bits
     * @param lastEdgeTick hub time of the last edge, µs, 32 bits
     */
    public void onPulses(long arrivedUs, long timeUs, long tick, long pulses, long lastEdgeTick) {
        train.onPulses(timeUs, tick, pulses, lastEdgeTick);
        say(arrivedUs, timeUs);
    }

    /** As {@link FlowSense#onNoPulseYet}. */
    public void onNoPulseYet(long arrivedUs, long timeUs, long tick) {
        train.onNoPulseYet(timeUs, tick);
        say(arrivedUs, timeUs);
    }

    private void say(long arrivedUs, long timeUs) {
        Quantity perS = train.perS(timeUs, Long.MAX_VALUE);
        if (perS.isKnown()) {
            // Where no pulse has come for a while, what is known is known of now.
            long middleUs = train.isSlowing() ? timeUs : (train.windowFromUs() + train.windowToUs()) / 2;
            speed.onWheel(arrivedUs, middleUs, perS.get() / pulsesPerM, perS.variance() / (pulsesPerM * pulsesPerM));
        }
    }

    /**
     * Speed by the pulses alone, m/s.
     *
     * @param nowUs event time, µs
     * @param silenceUs older than this it is silent, µs
     */
    public Quantity speedMps(long nowUs, long silenceUs) {
        Quantity perS = train.perS(nowUs, silenceUs);
        return perS.isKnown()
                ? Quantity.known(perS.get() / pulsesPerM, perS.variance() / (pulsesPerM * pulsesPerM), perS.ageUs())
                : perS;
    }

    /** The hub has started anew. */
    public void onRestart() {
        train.onRestart();
    }

    /** Way since the first sentence, m, as {@link FlowSense#volumeM3}. */
    public double wayM() {
        return train.pulses() / pulsesPerM;
    }
}
