package evenfall.retry;

import java.time.Duration;

/** Waits that double from the first to the longest and stay there until something worked. Not safe for several threads. */
public final class BackOff {
    private final long firstMs;
    private final long longestMs;
    private long nextMs;

    /**
     * @param first above zero
     * @param longest at least {@code first}
     */
    public BackOff(Duration first, Duration longest) {
        this.firstMs = first.toMillis();
        this.longestMs = longest.toMillis();
        if (firstMs <= 0 || longestMs < firstMs) {
            throw new IllegalArgumentException("the first wait is above zero and the longest not below it");
        }
        this.nextMs = firstMs;
    }

    /** The wait after one more failure, ms. */
    public long nextMs() {
        long wait = nextMs;
        nextMs = Math.min(longestMs, 2 * nextMs);
        return wait;
    }

    /** It worked: the next failure starts with the first wait again. */
    public void reset() {
        nextMs = firstMs;
    }
}
