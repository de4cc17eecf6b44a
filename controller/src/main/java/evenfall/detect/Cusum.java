package evenfall.detect;

/** The one-sided cumulative sum {@code S = max(0, S + x − reference)} of Page (1954), in the unit of what it is given. */
public final class Cusum {
    private double sum;
    private long looks;

    /**
     * Takes one look.
     *
     * @param x the signal; past the reference it speaks for a change
     * @param reference half way between what the signal is and the least that it must have become
     * @return the sum
     */
    public double take(double x, double reference) {
        sum = Math.max(0, sum + x - reference);
        looks = sum > 0 ? looks + 1 : 0;
        return sum;
    }

    /** What has been added up since it was last nothing. */
    public double sum() {
        return sum;
    }

    /** Looks since the sum was last nothing: the change came with the first of them, as far as can be told. */
    public long looks() {
        return looks;
    }

    /** Goes on from no more than a bound, so that what was long past its limit does not take as long to come back. */
    public void cap(double most) {
        sum = Math.min(sum, most);
    }

    public void reset() {
        sum = 0;
        looks = 0;
    }
}
