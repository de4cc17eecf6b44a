package evenfall.mqtt;

/** A message in the outbox. Its payload is nobody's to change. */
final class Letter {
    private final long id;
    private final String topic;
    private final byte[] payload;
    private final boolean retained;
    private final boolean newestOnly;

    /**
     * @param id its number, never used twice
     * @param retained whether the broker shall keep it
     * @param newestOnly whether a newer one for the topic may take its place while it has not been sent
     */
    Letter(long id, String topic, byte[] payload, boolean retained, boolean newestOnly) {
        this.id = id;
        this.topic = topic;
        this.payload = payload;
        this.retained = retained;
        this.newestOnly = newestOnly;
    }

    long id() {
        return id;
    }

    String topic() {
        return topic;
    }

    byte[] payload() {
        return payload;
    }

    boolean retained() {
        return retained;
    }

    boolean newestOnly() {
        return newestOnly;
    }
}
