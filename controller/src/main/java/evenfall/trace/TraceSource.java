package evenfall.trace;

import java.io.IOException;
import java.io.InputStream;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** A recording, read from start to end, whatever form it has. */
public interface TraceSource {

    /**
     * Returns the next event, or null after the last one.
     *
     * @throws TraceFormatException when a line is not what it may be
     * @throws IOException when the stream cannot be read
     */
    @Nullable
    TraceEvent next() throws IOException;

    /**
     * Returns how the recording ended.
     *
     * @throws IllegalStateException before {@link #next()} has returned null
     */
    TraceEnd end();

    /**
     * Hands all events that are left to a consumer and returns how the recording ended.
     *
     * @throws TraceFormatException when a line is not what it may be
     * @throws IOException when the stream cannot be read
     */
    default TraceEnd readAll(Consumer<? super TraceEvent> consumer) throws IOException {
        TraceEvent event = next();
        while (event != null) {
            consumer.accept(event);
            event = next();
        }
        return end();
    }

    /**
     * Returns the same source, but one that complains at its first event when there is none, or nothing but the end.
     *
     * @param name the file's name, for messages
     */
    default TraceSource notEmpty(String name) {
        return new NotEmpty(this, name);
    }

    /**
     * Opens a trace or a raw log of a receiver, compressed or not; which it is shows in its first bytes.
     *
     * @param in is read, never closed
     * @param name the file's name, for messages
     * @throws IOException when the stream cannot be read
     */
    static TraceSource open(InputStream in, String name) throws IOException {
        InputStream plain = PlainInput.of(in);
        return TraceReader.isRawLog(plain) ? new RawLog(plain, name) : new TraceReader(plain, name);
    }
}
