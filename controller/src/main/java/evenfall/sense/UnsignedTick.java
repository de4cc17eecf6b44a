package evenfall.sense;

/**
 * Unwraps counters of 32 bits without sign. A step of less than half the range forwards is a step; anything else means that the
 * hub has started anew.
 */
final class UnsignedTick {
    private static final long RANGE = 1L << 32;

    private UnsignedTick() {}

    /** How far from one reading to the next, 0 to 2^32 - 1. */
    static long step(long from, long to) {
        return Math.floorMod(to - from, RANGE);
    }

    static boolean isRestart(long from, long to) {
        return step(from, to) >= RANGE / 2;
    }
}
