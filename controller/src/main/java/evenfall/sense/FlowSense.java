package evenfall.sense;

/**
 * Flow by reciprocal counting: pulses between two edges over the hub's time between the same two edges, so the frequency is exact
 * however seldom a sentence comes. A lost sentence costs resolution, not volume.
 *
 * <p>Where pulses stop coming, the time since the last edge bounds the frequency from above, and the flow sinks to nothing by
 * that bound.
 */
public final class FlowSense {
    /** Long enough to average the unevenness of a meter's blades, short enough to follow a rate controller. Our choice. */
    static final long WINDOW_US = 300_000;

    /** Without an edge for so long the flow counts as none. Our choice: below a pulse in two seconds no meter is in its range. */
    static final long NO_PULSE_US = 2_000_000;

    private static final int KEPT = 64;

    private final double pulsesPerM3;
    private final long[] count = new long[KEPT];
    private final long[] edgeTick = new long[KEPT];
    private int newest = -1;
    private int held;
    private long newestTick;
    private long newestTimeUs = -1;
    private boolean restarted;

    /**
     * @param pulsesPerM3 K-factor, pulses per cubic metre, above 0
     */
    public FlowSense(double pulsesPerM3) {
        this.pulsesPerM3 = pulsesPerM3;
    }

    /**
     * Takes one sentence.
     *
     * @param timeUs event time of arrival, µs
     * @param tick hub time of the sentence, µs, 32 bits
     * @param pulses cumulative count, 32 bits
     * @param lastEdgeTick hub time of the last edge, µs, 32 bits
     */
    public void onPulses(long timeUs, long tick, long pulses, long lastEdgeTick) {
        if (held > 0 && isBroken(tick, pulses)) {
            held = 0;
            newest = -1;
            restarted = true;
        }
        newestTick = tick;
        newestTimeUs = timeUs;
        if (held > 0 && count[newest] == pulses) {
            return;
        }
        newest = (newest + 1) % KEPT;
        count[newest] = pulses;
        edgeTick[newest] = lastEdgeTick;
        held = Math.min(held + 1, KEPT);
    }

    private boolean isBroken(long tick, long pulses) {
        return UnsignedTick.isRestart(newestTick, tick) || UnsignedTick.isRestart(count[newest], pulses);
    }

    /** A sentence in which no pulse has been seen since the hub started: the time counts, there is no edge. */
    public void onNoPulseYet(long timeUs, long tick) {
        held = 0;
        newest = -1;
        newestTick = tick;
        newestTimeUs = timeUs;
    }

    /**
     * The flow as last heard of.
     *
     * @param nowUs event time, µs
     * @param silenceUs older than this it is silent, µs
     * @return m³/s
     */
    public Quantity flowM3ps(long nowUs, long silenceUs) {
        if (newestTimeUs < 0) {
            return Quantity.unknown(Unknown.NOT_YET, -1);
        }
        long ageUs = nowUs - newestTimeUs;
        if (ageUs > silenceUs) {
            return Quantity.unknown(Unknown.SILENT, ageUs);
        }
        if (held == 0) {
            return Quantity.known(0, ageUs);
        }
        long sinceEdgeUs = UnsignedTick.step(edgeTick[newest], newestTick);
        if (sinceEdgeUs > NO_PULSE_US) {
            return Quantity.known(0, ageUs);
        }
        int oldest = oldestInWindow();
        if (oldest == newest) {
            return Quantity.unknown(restarted ? Unknown.HUB_RESTARTED : Unknown.TOO_FEW_PULSES, ageUs);
        }
        restarted = false;
        double pulses = UnsignedTick.step(count[oldest], count[newest]);
        double spanUs = UnsignedTick.step(edgeTick[oldest], edgeTick[newest]);
        double pulsesPerS = pulses / spanUs * 1e6;
        if (sinceEdgeUs > 0) {
            // One pulse can hide since the last edge, not more.
            pulsesPerS = Math.min(pulsesPerS, 1e6 / sinceEdgeUs);
        }
        return Quantity.known(pulsesPerS / pulsesPerM3, ageUs);
    }

    /** When the pulses that the flow rests on began, µs of event time; the latest sentence's time where it rests on none. */
    public long windowFromUs() {
        return held == 0 ? newestTimeUs : edgeTimeUs(oldestInWindow());
    }

    /** When they ended, µs of event time. */
    public long windowToUs() {
        return held == 0 ? newestTimeUs : edgeTimeUs(newest);
    }

    private long edgeTimeUs(int i) {
        return newestTimeUs - UnsignedTick.step(edgeTick[i], newestTick);
    }

    private int oldestInWindow() {
        int oldest = newest;
        for (int back = 1; back < held; back++) {
            int i = Math.floorMod(newest - back, KEPT);
            oldest = i;
            if (UnsignedTick.step(edgeTick[i], edgeTick[newest]) >= WINDOW_US) {
                break;
            }
        }
        // An edge from before a long standstill says nothing about now.
        boolean stale = oldest != newest && UnsignedTick.step(edgeTick[oldest], edgeTick[newest]) > 4 * WINDOW_US;
        return stale ? newest : oldest;
    }
}
