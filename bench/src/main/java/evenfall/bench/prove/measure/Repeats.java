package evenfall.bench.prove.measure;

/** How many repeats a wanted uncertainty takes. */
final class Repeats {
    /** Nobody repeats a catch more often; the answer is then another method. */
    static final int MOST = 50;

    private Repeats() {}

    /**
     * The fewest runs in all with which the expanded uncertainty comes down to what is wanted, if they scatter as those so far.
     *
     * @param runSd standard deviation of one run
     * @param groups how many means the runs are shared over: each costs a degree of freedom
     * @param fixedStandard standard uncertainty that more runs do not lower
     * @param wanted expanded uncertainty, in the same unit
     * @return from groups + 1 to {@link #MOST}; 0 when no number of runs up to that is enough
     */
    static int needed(double runSd, int groups, double fixedStandard, double wanted) {
        for (int runs = groups + 1; runs <= MOST; runs++) {
            Estimate then = Estimate.of(
                    0,
                    Component.repeats("runs", runSd / Math.sqrt(runs), runs - groups),
                    new Component("fixed", Component.Type.B, fixedStandard, Double.POSITIVE_INFINITY));
            if (then.expanded() <= wanted) {
                return runs;
            }
        }
        return 0;
    }
}
