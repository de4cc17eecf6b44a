package evenfall.detect;

/**
 * Whether a signal has risen by at least one of several sizes: a cumulative sum for each, since a sum is quickest for the size that it
 * is made for, and one for a small rise sleeps through the first looks at a great one.
 *
 * <p>Each has the reference {@code k = size / 2} and the decision interval that follows from {@code k} and its part of the time between
 * false alarms ({@link RunLength}). The noise may change while it runs; sizes and noise are in the unit of the signal. A look counts for no
 * more than part of an interval past the reference, so one alone never decides. Takes looks without making objects.
 */
public final class ShiftTest {
    /** Beyond this reference Siegmund's approximation is off by more than an eighth, and a step is found in two or three looks anyway. */
    private static final double MOST_K = 1.25;

    /** Up to that reference it promises up to this times what there is, as the chain of Brook and Evans shows; so much more is asked for. */
    private static final double PROMISES = 1.15;

    /** One look alone counts for no more than this part of an interval past the reference: it never decides, two may. Our choice. */
    private static final double MOST_OF_INTERVAL = 0.7;

    /** A new interval is worked out when the reference has moved by this part of itself. */
    private static final double MOVED = 0.02;

    private final double[] sizes;
    private final double looksBetween;
    private final Cusum[] sums;
    private final double[] k;
    private final double[] h;
    private int used;
    private boolean sure;

    /**
     * @param looksBetweenFalseAlarms mean number of looks between false alarms of the whole test while nothing has changed
     * @param sizes rises to look for, ascending, above 0, in the unit of the signal
     */
    public ShiftTest(double looksBetweenFalseAlarms, double... sizes) {
        this.sizes = sizes.clone();
        this.looksBetween = looksBetweenFalseAlarms;
        sums = new Cusum[sizes.length];
        for (int i = 0; i < sizes.length; i++) {
            sums[i] = new Cusum();
        }
        k = new double[sizes.length];
        h = new double[sizes.length];
    }

    /**
     * Takes one look.
     *
     * @param rise the signal less what it is while nothing has changed
     * @param sigma standard deviation of a look, above 0; of one that stands for independent ones where looks are correlated
     */
    public void take(double rise, double sigma) {
        double z = rise / sigma;
        sure = false;
        int before = used;
        // Beyond the farthest reference the sums would all be the same one.
        used = 1;
        while (used < sizes.length && 0.5 * sizes[used - 1] / sigma < MOST_K) {
            used++;
        }
        for (int i = used; i < before; i++) {
            sums[i].reset();
        }
        for (int i = 0; i < used; i++) {
            double wanted = Math.min(MOST_K, 0.5 * sizes[i] / sigma);
            if (used != before || Math.abs(wanted - k[i]) > MOVED * k[i]) {
                k[i] = wanted;
                // By Bonferroni: together they alarm falsely no more often than the sum of each.
                h[i] = RunLength.interval(wanted, used * PROMISES * looksBetween);
            }
            double sum = sums[i].take(Math.min(z, k[i] + MOST_OF_INTERVAL * h[i]), k[i]);
            sure |= sum >= h[i];
            sums[i].cap(h[i]);
        }
    }

    /** Whether the latest look has decided for a rise. */
    public boolean isSure() {
        return sure;
    }

    /** Whether something speaks for a rise of the least size. */
    public boolean isLeaning() {
        return sums[0].sum() > 0;
    }

    public void reset() {
        sure = false;
        for (Cusum sum : sums) {
            sum.reset();
        }
    }
}
