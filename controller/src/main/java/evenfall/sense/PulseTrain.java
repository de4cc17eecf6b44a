package evenfall.sense;

/**
 * Reciprocal counting: pulses between two edges over the source's time between the same two edges, so the frequency is exact however
 * seldom a sentence comes. A lost sentence costs resolution, not pulses.
 *
 * <p><b>Variance.</b> {@code f = N / T} with N whole periods between two edges. N is counted, not measured: the ±1 count of a gated counter
 * does not arise, since the gate opens and shuts on edges. What is left is the time error of the two edges, each with variance
 * {@code s²}: {@code var f = f² · 2 s² / T²} (the resolution of a reciprocal counter; standard result of frequency measurement, from memory).
 * An edge is off by the unevenness of the blades or teeth, a share {@code u} of a period, and by the tick, uniform over 1 µs:
 * {@code s² = (u/f)² + 1/12 µs²}. So the relative standard deviation is about {@code √2 · u / N}.
 *
 * <p>Where pulses stop coming, the time since the last edge bounds the frequency from above: one pulse can hide in it, not more. The
 * frequency is then anywhere between none and the bound, with a twelfth of the bound squared as variance (a uniform distribution).
 */
final class PulseTrain {
    /** Unevenness of blades or teeth, as a share of a period. Our choice: a worn turbine; a good one has less. */
    static final double UNEVEN = 0.02;

    private static final double TICK_VARIANCE_US2 = 1.0 / 12;

    /** Without an edge for so long the frequency counts as none. Our choice: below a pulse in two seconds no meter is in its range. */
    static final long NO_PULSE_US = 2_000_000;

    private static final int KEPT = 64;

    private final long windowUs;
    private final long[] count = new long[KEPT];
    private final long[] edgeTick = new long[KEPT];
    private int newest = -1;
    private int held;
    private long newestTick;
    private long newestTimeUs = -1;
    private boolean restarted;
    private boolean noneYet;
    private double pulses;

    /**
     * @param windowUs edges at least so far apart are taken, µs
     */
    PulseTrain(long windowUs) {
        this.windowUs = windowUs;
    }

    /** The source has started anew: its counter and its clock begin at 0. */
    void onRestart() {
        held = 0;
        newest = -1;
        restarted = true;
        newestTick = 0;
        // What it counts from now on has not been counted before.
        noneYet = true;
    }

    void onPulses(long timeUs, long tick, long pulseCount, long lastEdgeTick) {
        if (held > 0 && isBroken(tick, pulseCount)) {
            onRestart();
        }
        newestTick = tick;
        newestTimeUs = timeUs;
        if (held > 0) {
            if (count[newest] == pulseCount) {
                return;
            }
            pulses += UnsignedTick.step(count[newest], pulseCount);
        } else if (noneYet) {
            pulses += pulseCount;
        }
        noneYet = false;
        newest = (newest + 1) % KEPT;
        count[newest] = pulseCount;
        edgeTick[newest] = lastEdgeTick;
        held = Math.min(held + 1, KEPT);
    }

    private boolean isBroken(long tick, long pulseCount) {
        return UnsignedTick.isRestart(newestTick, tick) || UnsignedTick.isRestart(count[newest], pulseCount);
    }

    /** A sentence in which no pulse has been seen since the source started: the time counts, there is no edge. */
    void onNoPulseYet(long timeUs, long tick) {
        if (held > 0) {
            onRestart();
        }
        noneYet = true;
        newestTick = tick;
        newestTimeUs = timeUs;
    }

    /** Pulses since the first sentence heard, across wraps and restarts of the source. */
    double pulses() {
        return pulses;
    }

    /** Pulses per second, as {@link FlowSense#flowM3ps}. */
    Quantity perS(long nowUs, long silenceUs) {
        if (newestTimeUs < 0) {
            return Quantity.unknown(Unknown.NOT_YET, -1);
        }
        long ageUs = nowUs - newestTimeUs;
        if (ageUs > silenceUs) {
            return Quantity.unknown(Unknown.SILENT, ageUs);
        }
        if (held == 0) {
            // A hub that has just started anew has had no time yet to count what flows.
            boolean tooSoon = restarted && newestTick < NO_PULSE_US;
            return tooSoon ? Quantity.unknown(Unknown.HUB_RESTARTED, ageUs) : none(ageUs);
        }
        long sinceEdgeUs = UnsignedTick.step(edgeTick[newest], newestTick);
        if (sinceEdgeUs > NO_PULSE_US) {
            return none(ageUs);
        }
        int oldest = oldestInWindow();
        if (oldest == newest) {
            return Quantity.unknown(restarted ? Unknown.HUB_RESTARTED : Unknown.TOO_FEW_PULSES, ageUs);
        }
        restarted = false;
        double spanUs = UnsignedTick.step(edgeTick[oldest], edgeTick[newest]);
        double perS = UnsignedTick.step(count[oldest], count[newest]) / spanUs * 1e6;
        double boundPerS = 1e6 / sinceEdgeUs;
        if (sinceEdgeUs > 0 && perS > boundPerS) {
            return Quantity.known(boundPerS, boundPerS * boundPerS / 12, ageUs);
        }
        double unevenUs = UNEVEN * 1e6 / perS;
        double edgeUs2 = unevenUs * unevenUs + TICK_VARIANCE_US2;
        return Quantity.known(perS, 2 * perS * perS * edgeUs2 / (spanUs * spanUs), ageUs);
    }

    /** No pulse for so long: less than one in that time. */
    private static Quantity none(long ageUs) {
        double mostPerS = 1e6 / NO_PULSE_US;
        return Quantity.known(0, mostPerS * mostPerS / 12, ageUs);
    }

    /** Whether the last edge is older than a period of late: then it is the time since that says most. */
    boolean isSlowing() {
        if (held == 0) {
            return true;
        }
        int oldest = oldestInWindow();
        double spanUs = UnsignedTick.step(edgeTick[oldest], edgeTick[newest]);
        double sinceEdgeUs = UnsignedTick.step(edgeTick[newest], newestTick);
        return sinceEdgeUs * UnsignedTick.step(count[oldest], count[newest]) > spanUs;
    }

    long windowFromUs() {
        return held == 0 ? newestTimeUs : edgeTimeUs(oldestInWindow());
    }

    long windowToUs() {
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
            if (UnsignedTick.step(edgeTick[i], edgeTick[newest]) >= windowUs) {
                break;
            }
        }
        // An edge from before a long standstill says nothing about now.
        boolean stale = oldest != newest && UnsignedTick.step(edgeTick[oldest], edgeTick[newest]) > 4 * windowUs;
        return stale ? newest : oldest;
    }
}
