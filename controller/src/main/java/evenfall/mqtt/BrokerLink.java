package evenfall.mqtt;

/** One connection to the broker, used once. */
interface BrokerLink {
    /**
     * Hands a message over; whether it arrived is told to {@link Events}.
     *
     * @param id what to call it there
     * @return false when the link has too much on its way; nothing was handed over then
     * @throws LinkException when the connection is broken
     */
    boolean send(long id, String topic, byte[] payload, boolean retained, int qos) throws LinkException;

    /** Asks for all messages of a topic filter. */
    void subscribe(String filter) throws LinkException;

    void unsubscribe(String filter) throws LinkException;

    /** Ends the connection as agreed, so that the broker does not publish the last will; waits a little for that. */
    void part();

    /** Ends the connection by force; waits a little, and leaves what hangs behind. */
    void abandon();

    /** What happens on a connection. Called on threads of the link; must return at once. */
    interface Events {
        void delivered(long id);

        /** A message came that the broker had retained before. */
        void foundRetained(String topic);

        void lost(String why);
    }

    /** Connects. */
    @FunctionalInterface
    interface Dialer {
        /**
         * @param will the payload that the broker shall publish, retained, when the box no longer answers
         */
        BrokerLink dial(byte[] will, Events events) throws LinkException;
    }

    /** The broker cannot be reached or the connection is broken; the message says why in a few words for people. */
    final class LinkException extends Exception {
        private static final long serialVersionUID = 1L;

        LinkException(String why) {
            super(why);
        }
    }
}
