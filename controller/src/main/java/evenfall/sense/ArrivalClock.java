package evenfall.sense;

/**
 * Brings a source's own clock to event time by the arrivals of its sentences, so that an edge, an echo or a fix is known to about a
 * millisecond although lines, drivers and threads are late by more than that.
 *
 * <p>Nothing arrives before it was sent. So arrival less source time, over many sentences, has a lower envelope: the sentences that were
 * least held up. The envelope is followed as a minimum that may rise by no more than the clocks can drift apart, {@value #DRIFT} of the time
 * (200 ppm; a crystal of a small board has 20 to 100 ppm, common practice, no source). Between two sentences that were not held up
 * the envelope is off by that drift times their distance: 0.2 ms after a second. What every sentence is late by cannot be seen; as much of
 * it as is known (its bytes on the line) is handed in.
 *
 * <p>A source of 32 bits wraps; the turn is found from the time of arrival, so a silence of many turns does no harm. A source that is not
 * where the envelope expects it has started anew, unless it went on as before while event time leapt ahead (a stalled thread, a clock that
 * was set): then the envelope begins again.
 */
public final class ArrivalClock {
    static final double DRIFT = 200e-6;

    /** No line holds a sentence for longer and then goes on; beyond that event time has leapt. Our choice. */
    private static final long LEAP_US = 5_000_000;

    /** Late by more than this for all of {@link #LEAP_US} is a leap too. Our choice: more than a driver's buffer holds. */
    private static final long HELD_UP_US = 250_000;

    /** A source may be ahead of the envelope by so much before it must have started anew, µs. Our choice: far beyond any drift. */
    private static final long AHEAD_US = 100_000;

    /** What a sentence says about the clock. */
    public enum Step {
        /** It runs on. */
        RUNS,
        /** It has started anew. */
        RESTARTED,
        /** It runs on, but event time has leapt ahead. */
        LEAPT
    }

    private final long rangeUs;
    private final long leastDelayUs;
    private boolean anchored;
    private long sourceUs;
    private long arrivalUs;
    private double envelopeUs;
    private long heldSinceUs = -1;
    private double leastHeldUs;

    /**
     * @param rangeUs the source's clock wraps after so long, µs; 0 where it does not
     * @param leastDelayUs what even the least delayed sentence is late by, µs, 0 or more
     */
    public ArrivalClock(long rangeUs, long leastDelayUs) {
        this.rangeUs = rangeUs;
        this.leastDelayUs = leastDelayUs;
    }

    /** Forgets the source's clock: it has started anew. */
    public void restart() {
        anchored = false;
    }

    /** Whether any sentence has been heard since the start or the last restart. */
    public boolean isAnchored() {
        return anchored;
    }

    /**
     * Takes the clock of one sentence.
     *
     * @param arrivedUs event time at which the sentence was whole, µs; never falls
     * @param saysUs the source's clock in it, µs
     */
    public Step hear(long arrivedUs, long saysUs) {
        if (!anchored) {
            anchor(arrivedUs, saysUs);
            return Step.RUNS;
        }
        long expectedUs = Math.round(arrivedUs - envelopeUs);
        long nextUs = unwrapped(saysUs, expectedUs);
        long lateUs = expectedUs - nextUs;
        long gapUs = arrivedUs - arrivalUs;
        long driftedUs = (long) Math.ceil(DRIFT * gapUs);
        // A line keeps the order of its sentences, so a clock that goes back has started anew.
        if (nextUs < sourceUs || lateUs > LEAP_US || lateUs < -AHEAD_US - driftedUs) {
            long stepUs = rangeUs > 0 ? Math.floorMod(saysUs - sourceUs, rangeUs) : saysUs - sourceUs;
            boolean ranOn = stepUs >= 0 && stepUs <= gapUs + driftedUs;
            anchor(arrivedUs, saysUs);
            return ranOn ? Step.LEAPT : Step.RESTARTED;
        }
        double delayUs = arrivedUs - (double) nextUs;
        envelopeUs = Math.min(delayUs, envelopeUs + DRIFT * Math.max(0, gapUs));
        sourceUs = nextUs;
        arrivalUs = arrivedUs;
        return heldUp(delayUs) ? Step.LEAPT : Step.RUNS;
    }

    private boolean heldUp(double delayUs) {
        if (delayUs - envelopeUs < HELD_UP_US) {
            heldSinceUs = -1;
            return false;
        }
        if (heldSinceUs < 0) {
            heldSinceUs = sourceUs;
            leastHeldUs = delayUs;
        }
        leastHeldUs = Math.min(leastHeldUs, delayUs);
        if (sourceUs - heldSinceUs < LEAP_US) {
            return false;
        }
        envelopeUs = leastHeldUs;
        heldSinceUs = -1;
        return true;
    }

    private void anchor(long arrivedUs, long saysUs) {
        anchored = true;
        sourceUs = saysUs;
        arrivalUs = arrivedUs;
        envelopeUs = arrivedUs - (double) saysUs;
        heldSinceUs = -1;
    }

    private long unwrapped(long saysUs, long nearUs) {
        if (rangeUs == 0) {
            return saysUs;
        }
        long ahead = Math.floorMod(saysUs - nearUs, rangeUs);
        return nearUs + (ahead >= rangeUs / 2 ? ahead - rangeUs : ahead);
    }

    /**
     * Event time of a moment on the source's clock that lies within half a turn of the newest sentence; never after that sentence's
     * arrival.
     *
     * @param saysUs the source's clock, µs
     * @return µs
     */
    public long eventUs(long saysUs) {
        if (!anchored) {
            throw new IllegalStateException("the source has not been heard yet");
        }
        return Math.min(arrivalUs, Math.round(unwrapped(saysUs, sourceUs) + envelopeUs) - leastDelayUs);
    }
}
