package evenfall.replay;

/** The core fails again and again; to go on would only pretend to watch. */
public final class CoreBrokenException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    CoreBrokenException(String message, Throwable cause) {
        super(message, cause);
    }
}
