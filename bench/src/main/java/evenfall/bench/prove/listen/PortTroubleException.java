package evenfall.bench.prove.listen;

/** A port is absent, taken, silent or lost; the message is half a sentence for people. */
public final class PortTroubleException extends Exception {
    private static final long serialVersionUID = 1L;

    public PortTroubleException(String message) {
        super(message);
    }
}
