package evenfall.sense;

/**
 * Flow by reciprocal counting ({@link PulseTrain}, which also derives its variance). A lost sentence costs resolution, not volume.
 *
 * <p>Where pulses stop coming, the time since the last edge bounds the frequency from above, and the flow sinks to nothing by
 * that bound. The variance is that of the counting; what a wrong K-factor does to every litre is not in it.
 */
public final class FlowSense {
    /** Long enough to average the unevenness of a meter's blades, short enough to follow a rate controller. Our choice. */
    static final long WINDOW_US = 300_000;

    private final double pulsesPerM3;
    private final PulseTrain train = new PulseTrain(WINDOW_US);

    /**
     * @param pulsesPerM3 K-factor, pulses per cubic metre, above 0
     */
    public FlowSense(double pulsesPerM3) {
        this.pulsesPerM3 = pulsesPerM3;
    }

    /**
     * Takes one sentence.
     *
     * @param timeUs event time of its tick, µs; of its arrival where that is all that is known
     * @param tick hub time of the sentence, µs, 32 bits
     * @param pulses cumulative count, 32 bits
     * @param lastEdgeTick hub time of the last edge, µs, 32 bits
     */
    public void onPulses(long timeUs, long tick, long pulses, long lastEdgeTick) {
        train.onPulses(timeUs, tick, pulses, lastEdgeTick);
    }

    /** A sentence in which no pulse has been seen since the hub started: the time counts, there is no edge. */
    public void onNoPulseYet(long timeUs, long tick) {
        train.onNoPulseYet(timeUs, tick);
    }

    /** The hub has started anew: counter and clock begin at 0. */
    public void onRestart() {
        train.onRestart();
    }

    /**
     * The flow as last heard of.
     *
     * @param nowUs event time, µs
     * @param silenceUs older than this it is silent, µs
     * @return m³/s
     */
    public Quantity flowM3ps(long nowUs, long silenceUs) {
        Quantity perS = train.perS(nowUs, silenceUs);
        return perS.isKnown()
                ? Quantity.known(perS.get() / pulsesPerM3, perS.variance() / (pulsesPerM3 * pulsesPerM3), perS.ageUs())
                : perS;
    }

    /**
     * Volume since the first sentence, m³: across wraps, lost sentences and restarts of the hub. Only what passes while the hub has no
     * power is missing.
     */
    public double volumeM3() {
        return train.pulses() / pulsesPerM3;
    }

    /** When the pulses that the flow rests on began, µs of event time; the latest sentence's time where it rests on none. */
    public long windowFromUs() {
        return train.windowFromUs();
    }

    /** When they ended, µs of event time. */
    public long windowToUs() {
        return train.windowToUs();
    }
}
