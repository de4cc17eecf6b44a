package evenfall.bench.prove.listen;

import evenfall.bench.prove.guide.Recording;

/** A recording under way. */
public interface Session extends AutoCloseable {
    /** How long it lasts by itself, s; 0 where a person says when it ends. */
    double seconds();

    /** Remembers this moment. */
    void mark();

    /** What has come so far, in a few words. */
    String soFar();

    /** The same as a number: pulses, or metres, or looks, or bytes; NaN where nothing is counted. */
    default double amount() {
        return Double.NaN;
    }

    /**
     * Ends the recording.
     *
     * @throws PortTroubleException when a port was lost meanwhile
     */
    Recording finish() throws PortTroubleException, InterruptedException;

    /** Lets go of the ports; nothing after {@link #finish}. */
    @Override
    void close();
}
