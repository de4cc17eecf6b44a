package evenfall.sim.world;

/** Where the truth goes while a run goes on. Never on the controller's side. */
public interface TruthSink {
    /** Five times a second, in order. */
    void sample(TruthSample sample);

    /** Once, when the run has ended; the ledger is complete. */
    void end(RowLedger ledger);
}
