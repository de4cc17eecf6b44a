package evenfall.judge;

/** What one look at a limit gives. */
enum Verdict {
    /** Past the limit. */
    OVER,
    /** Past the limit as it seems, but not yet surely: counts for the hold and does not raise. */
    LEANING,
    /** Neither past the limit nor far enough from it to clear. */
    BETWEEN,
    /** Well within. */
    WELL,
    /** Cannot be judged: an input is not known. */
    UNKNOWN;

    /**
     * Judges a number against a limit from above.
     *
     * @param value the number
     * @param limit past this it is over
     * @param wellBelow at or below this it is well
     */
    static Verdict above(double value, double limit, double wellBelow) {
        return value > limit ? OVER : value <= wellBelow ? WELL : BETWEEN;
    }

    /** As {@link #above}, from below. */
    static Verdict below(double value, double limit, double wellAbove) {
        return value < limit ? OVER : value >= wellAbove ? WELL : BETWEEN;
    }
}
