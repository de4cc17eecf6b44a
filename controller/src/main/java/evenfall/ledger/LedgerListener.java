package evenfall.ledger;

/** Is told what the ledger has finished, in its order. */
public interface LedgerListener {
    void cell(LedgerCell cell);

    void pass(PassSummary pass);
}
