package evenfall.sim.feed;

import java.util.concurrent.locks.LockSupport;

/**
 * Holds a run to the clock: waits before each emission until its moment has come. The only place in the simulator that sleeps.
 *
 * <p>The clock is started by the first call, so that preparing a run costs nothing.
 */
public final class RealTimePace {
    private final double speed;
    private boolean started;
    private long originNs;
    private long worstLateUs;

    /** @param speed how many times faster than the clock, above 0; 1 is real time */
    public RealTimePace(double speed) {
        if (!(speed > 0)) {
            throw new IllegalArgumentException("a pace is above 0, not " + speed);
        }
        this.speed = speed;
    }

    /**
     * Waits for a moment of the run.
     *
     * @param timeUs µs since the start of the run
     * @return false when the thread was interrupted (it still is): the run should stop
     */
    public boolean await(long timeUs) {
        long offsetNs = (long) (timeUs * 1000.0 / speed);
        if (!started) {
            started = true;
            originNs = System.nanoTime() - offsetNs;
        }
        long leftNs = originNs + offsetNs - System.nanoTime();
        worstLateUs = Math.max(worstLateUs, -leftNs / 1000);
        while (leftNs > 0) {
            if (Thread.currentThread().isInterrupted()) {
                return false;
            }
            LockSupport.parkNanos(leftNs);
            leftNs = originNs + offsetNs - System.nanoTime();
        }
        return !Thread.currentThread().isInterrupted();
    }

    /** How late the run has been at worst, µs of the clock; 0 when it has always been in time. */
    public long worstLateUs() {
        return worstLateUs;
    }
}
