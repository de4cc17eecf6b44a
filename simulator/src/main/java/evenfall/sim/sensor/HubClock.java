package evenfall.sim.sensor;

/**
 * The hub's own microseconds: an unsigned 32-bit counter that runs a little fast or slow and runs over every 71.6 minutes.
 *
 * @param startTick its reading when the run starts, 0 to 2³² − 1
 * @param driftPpm how much too fast it runs, parts in a million; negative when slow
 */
public record HubClock(long startTick, double driftPpm) {
    private static final long MASK = 0xffffffffL;

    /** Reading at a moment of the run, µs. */
    public long tick(double timeUs) {
        return startTick + (long) Math.floor(timeUs + timeUs * driftPpm * 1e-6) & MASK;
    }
}
