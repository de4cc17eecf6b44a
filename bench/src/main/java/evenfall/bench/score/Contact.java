package evenfall.bench.score;

/**
 * A tip that touched soil or crop.
 *
 * @param place {@code left} or {@code right}
 * @param atS when, s
 * @param descentS from when it was last at the target height, s; infinite where it has not been there in this run
 */
record Contact(String place, double atS, double descentS) {
    /** Whether nobody could have been warned in time. */
    boolean isTooQuick() {
        return descentS < ScoringRules.TOO_QUICK_S;
    }
}
