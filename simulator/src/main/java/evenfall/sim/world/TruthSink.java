package evenfall.sim.world;

/** Where the truth goes while a run goes on. Never on the controller's side. */
public interface TruthSink {
    /** Five times a second, in order. */
    void sample(TruthSample sample);

    /**
     * Fifty times a second, before the sample of the same moment: what strikes the soil does so between two samples.
     *
     * @param timeUs µs since the start of the run
     * @param heightM of each outlet over the ground under it, m; valid during the call only, and not to be changed
     */
    default void heights(long timeUs, double[] heightM) {
        // Who does not look at heights needs to do nothing.
    }

    /** Once, when the run has ended; the ledger is complete. */
    void end(RowLedger ledger);
}
