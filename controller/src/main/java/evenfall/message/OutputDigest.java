package evenfall.message;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * SHA-256 (FIPS 180-4) over every message in order: topic, line feed, payload, line feed. Two runs with the same digest said
 * the same, byte for byte.
 */
public final class OutputDigest implements Publisher {
    private static final byte LINE_FEED = '\n';

    private final MessageDigest digest;
    private long messages;

    /** A digest of no messages yet. */
    public OutputDigest() {
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    @Override
    public void publish(String topic, Payload payload, boolean retained, Delivery delivery) {
        digest.update(topic.getBytes(StandardCharsets.UTF_8));
        digest.update(LINE_FEED);
        payload.addTo(digest);
        digest.update(LINE_FEED);
        messages++;
    }

    /** How many messages there were. */
    public long messages() {
        return messages;
    }

    /** The digest so far as 64 hexadecimal digits; more messages may follow. */
    public String hex() {
        try {
            return HexFormat.of().formatHex(((MessageDigest) digest.clone()).digest());
        } catch (CloneNotSupportedException e) {
            throw new IllegalStateException("Java's own SHA-256 can be cloned", e);
        }
    }
}
