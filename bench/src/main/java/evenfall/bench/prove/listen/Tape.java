package evenfall.bench.prove.listen;

import evenfall.bench.prove.guide.Recording;
import evenfall.wire.SentenceHandler;

/** Collects from decoded sentences. Used by one thread at a time; the line sees to that. */
interface Tape extends SentenceHandler {
    /**
     * The sentences that follow arrive now.
     *
     * @param timeS since the begin, s
     */
    void now(double timeS);

    /** Whether something that matters has come. */
    boolean heard();

    /** What it must hear, for complaints. */
    String wanted();

    String soFar();

    /** The same as a number: pulses, or metres, or looks, or bytes. */
    double amount();

    /** Whether what is measured is at rest, so that the recording may end. */
    default boolean atRest() {
        return true;
    }

    Recording recording(double seconds);
}
