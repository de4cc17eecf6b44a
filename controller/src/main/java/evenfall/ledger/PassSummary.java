package evenfall.ledger;

/**
 * A pass that has ended.
 *
 * @param number from 1
 * @param beganUs event time, µs
 * @param endedUs event time, µs
 * @param end why it ended
 * @param turning whether it is the turn between two passes, driven with sections on
 * @param cells how many distance cells it has
 * @param ages of the oldest inputs at any moment in it
 * @param pass its own sums
 * @param totals sums since the core was started
 * @param cellsKept how many cells are remembered for the passes to come
 * @param cellsForgotten how many were given up because there is no more room for them; a pass beside them takes them as not driven
 */
public record PassSummary(
        int number,
        long beganUs,
        long endedUs,
        End end,
        boolean turning,
        int cells,
        LedgerCell.Ages ages,
        LedgerTotals pass,
        LedgerTotals totals,
        int cellsKept,
        long cellsForgotten) {

    /** Why a pass ends. The words go into messages as they stand. */
    public enum End {
        SECTIONS_OFF("the sections went off"),
        TURNED("the machine turned"),
        STRAIGHT("the turn was over"),
        WATCH_ENDED("the watch ended");

        private final String words;

        End(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }
}
