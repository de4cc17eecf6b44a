package evenfall.monitor;

import evenfall.judge.Alert;
import evenfall.ledger.LedgerCell;
import evenfall.ledger.PassSummary;

/** Where the core's outputs go, in the order in which they come to be. Called on the thread that feeds the core. */
public interface Outputs {
    /** Five times a second of event time. */
    void live(Live live);

    void raised(Alert alert);

    /**
     * @param alert as it was raised
     * @param clearedUs µs of event time
     */
    void cleared(Alert alert, long clearedUs);

    /**
     * Somebody has seen an alert that stands; said once for each.
     *
     * @param atUs µs of event time
     */
    default void acknowledged(Alert alert, long atUs) {}

    /** A distance cell of the row ledger is finished. After the live output of the same moment. */
    default void cell(LedgerCell cell) {}

    /** A pass has ended; its last cell came before. */
    default void pass(PassSummary pass) {}
}
