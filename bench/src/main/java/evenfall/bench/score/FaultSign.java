package evenfall.bench.score;

/**
 * How a fault can be told from healthy running by what is fitted; derived in {@code bench/docs/scoring.md}.
 *
 * @param shows whether it shows at a moment
 * @param leastS it must show for so long without a break before it is due, s
 * @param withinS from when it began to show, an alert is late after this, s
 * @param byTruth it is due when the truth itself passes a limit of one of its kinds, and for nothing else; the rest plays no part then
 */
record FaultSign(Shows shows, double leastS, double withinS, boolean byTruth) {

    /** Whether a fault shows. */
    @FunctionalInterface
    interface Shows {
        /**
         * @param now a moment at which the fault is there
         * @param onset the moment at which it came
         */
        boolean at(TruthMoment now, TruthMoment onset);
    }

    static FaultSign when(double withinS, Shows shows) {
        return new FaultSign(shows, withinS, withinS, false);
    }

    static FaultSign truth() {
        return new FaultSign((now, onset) -> false, 0, ScoringRules.LATE_S, true);
    }

    static FaultSign never() {
        return new FaultSign((now, onset) -> false, 0, 0, false);
    }
}
