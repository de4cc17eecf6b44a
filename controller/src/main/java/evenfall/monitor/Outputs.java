package evenfall.monitor;

import evenfall.judge.Alert;

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
}
