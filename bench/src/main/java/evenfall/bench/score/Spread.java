package evenfall.bench.score;

import org.jspecify.annotations.Nullable;

/**
 * Differences between what was said and what was true: their mean, and percentiles of their magnitude to within 1 %, in the same little
 * memory however many there are.
 */
public final class Spread {
    private static final double SMALLEST = 1e-6;
    private static final double STEP = 1.01;
    private static final double PER_STEP = 1 / Math.log(STEP);

    /** Up to 1e9 times the smallest. */
    private static final int BINS = (int) Math.ceil(Math.log(1e9) * PER_STEP) + 1;

    private final int[] bins = new int[BINS];
    private long count;
    private double sum;

    /** Takes in one difference. */
    public void add(double difference) {
        count++;
        sum += difference;
        bins[bin(Math.abs(difference))]++;
    }

    /** Takes in all of another's. */
    public void add(Spread other) {
        count += other.count;
        sum += other.sum;
        for (int i = 0; i < BINS; i++) {
            bins[i] += other.bins[i];
        }
    }

    private static int bin(double magnitude) {
        if (!(magnitude > SMALLEST)) {
            return 0;
        }
        return Math.min(BINS - 1, 1 + (int) (Math.log(magnitude / SMALLEST) * PER_STEP));
    }

    public long count() {
        return count;
    }

    /** Null where there is none. */
    public @Nullable Double mean() {
        return count == 0 ? null : sum / count;
    }

    /** The magnitude that 95 % of the differences do not pass; null where there is none. */
    public @Nullable Double p95() {
        return percentile(0.95);
    }

    /**
     * The magnitude that a share of the differences does not pass, to within 1 % and never too small; null where there is none.
     *
     * @param share above 0, at most 1
     */
    public @Nullable Double percentile(double share) {
        if (count == 0) {
            return null;
        }
        long wanted = (long) Math.ceil(share * count);
        long below = 0;
        int at = 0;
        while (at < BINS - 1 && below + bins[at] < wanted) {
            below += bins[at];
            at++;
        }
        return at == 0 ? 0.0 : SMALLEST * Math.pow(STEP, at);
    }
}
