package evenfall.message;

import java.security.MessageDigest;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * The bytes of one message: JSON in UTF-8, or none where a retained message is taken away.
 *
 * <p>They stand in the buffer of whoever wrote them, which the next message is written over, and so are good until {@link
 * Publisher#publish} returns. Who wants to keep them takes {@link #bytes}: a copy, made once for all who ask, and not at all where
 * nobody does, as in a replay that only wants the digest. To ask too late is an error and not the next message's bytes.
 */
public final class Payload {
    private final byte[] buffer;
    private final int length;
    private byte @Nullable [] own;
    private boolean over;

    Payload(byte[] buffer, int length) {
        this.buffer = buffer;
        this.length = length;
    }

    /** One that lasts. The array is not copied, and nobody's to change. */
    public static Payload of(byte[] bytes) {
        Payload payload = new Payload(bytes, bytes.length);
        payload.own = bytes;
        return payload;
    }

    /** How many bytes. */
    public int length() {
        return length;
    }

    /** Whether it is the payload that takes a retained message away. */
    public boolean isEmpty() {
        return length == 0;
    }

    /** The bytes to keep: shared by all who ask, so nobody's to change. */
    public byte[] bytes() {
        byte[] kept = own;
        if (kept == null) {
            requireNotOver();
            kept = Arrays.copyOf(buffer, length);
            own = kept;
        }
        return kept;
    }

    void addTo(MessageDigest digest) {
        requireNotOver();
        digest.update(buffer, 0, length);
    }

    /** The buffer is about to be written over. */
    void over() {
        over = own == null;
    }

    private void requireNotOver() {
        if (over) {
            throw new IllegalStateException("asked for a message after it was published; ask while it is");
        }
    }
}
