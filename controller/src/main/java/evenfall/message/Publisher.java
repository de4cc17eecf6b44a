package evenfall.message;

/** Where messages go. Implementations return at once, whatever state their way out is in. */
@FunctionalInterface
public interface Publisher {
    /**
     * @param topic full topic
     * @param payload JSON in UTF-8; with {@code retained} an empty one takes the retained message away. Good during the call only: who
     *     keeps it takes its {@linkplain Payload#bytes bytes}
     * @param retained whether a subscriber that comes later shall get it too
     */
    void publish(String topic, Payload payload, boolean retained, Delivery delivery);
}
