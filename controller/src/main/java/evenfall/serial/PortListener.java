package evenfall.serial;

/** What ports have to tell. Called on each port's own thread; must return at once. */
public interface PortListener {
    /**
     * @param port name of the port
     * @param chunk as it came, at least one byte; the listener's to keep
     */
    void bytes(String port, byte[] chunk);

    /** The port is open now. */
    void found(String port);

    /**
     * The port was open and is no longer, or could not be opened at the start. Attempts go on.
     *
     * @param why a few words for people
     */
    void lost(String port, String why);

    /**
     * A lost port could not be opened again; said once for each reason in a row.
     *
     * @param why a few words for people
     */
    void refused(String port, String why);
}
