package evenfall.bench.prove.listen;

import evenfall.bench.prove.guide.Step;

/** What measures. */
public interface Instruments {
    /** Whether there is a port for what is wanted; else a person has to read it off and type it. */
    boolean canRecord(Step.Signal signal);

    /**
     * Begins to record.
     *
     * @throws PortTroubleException when a port cannot be opened or says nothing
     */
    Session start(Step.Signal signal) throws PortTroubleException, InterruptedException;
}
