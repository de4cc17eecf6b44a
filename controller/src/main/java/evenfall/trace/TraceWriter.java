package evenfall.trace;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

/** Writes events as lines of a trace. Never closes or flushes what it writes to. For one thread. */
public final class TraceWriter {

    private final Appendable out;
    private final StringBuilder line = new StringBuilder(128);
    private long lastUs;
    private boolean ended;

    /** Makes a writer that stands at the start of a trace. */
    public TraceWriter(Appendable out) {
        this.out = Objects.requireNonNull(out);
    }

    /**
     * Writes a remark; each line of the text becomes one of the trace.
     *
     * @throws IOException when it cannot be written
     */
    public void remark(String text) throws IOException {
        for (String part : text.split("\\R", -1)) {
            out.append(part.isEmpty() ? "#" : "# ").append(part).append('\n');
        }
    }

    /**
     * Writes an event.
     *
     * @throws IllegalArgumentException when its time is before the last one's
     * @throws IllegalStateException when the end has been written
     * @throws IOException when it cannot be written, or comes later than a reader would take: 7 days after the event before,
     *     31 days after the start
     */
    public void write(TraceEvent event) throws IOException {
        if (ended) {
            throw new IllegalStateException("the trace has ended; nothing can follow");
        }
        if (event.timeUs() < lastUs) {
            throw new IllegalArgumentException(
                    "time " + event.timeUs() + " µs after " + lastUs + " µs; times never fall");
        }
        String allowed = Checks.allowedInsteadOf(event.timeUs(), lastUs);
        if (allowed != null) {
            throw new IOException(
                    "time " + event.timeUs() + " µs after " + lastUs + " µs is too far off; allowed: " + allowed);
        }
        lastUs = event.timeUs();
        line.setLength(0);
        line.append(event.timeUs()).append(' ');
        if (event instanceof TraceEvent.Bytes chunk) {
            line.append(chunk.port()).append(' ');
            appendBytes(chunk.bytes());
        } else if (event instanceof TraceEvent.PortLost lost) {
            line.append(lost.port()).append(" lost");
        } else if (event instanceof TraceEvent.PortFound found) {
            line.append(found.port()).append(" found");
        } else if (event instanceof TraceEvent.Dropped dropped) {
            line.append(dropped.port()).append(" dropped:").append(dropped.bytes());
        } else {
            line.append("- end");
            ended = true;
        }
        out.append(line.append('\n'));
    }

    private void appendBytes(byte[] bytes) {
        if (isWholeSentence(bytes)) {
            line.append(new String(bytes, 0, bytes.length - 2, StandardCharsets.US_ASCII));
        } else {
            line.append(TraceReader.BYTES_MARK);
            EscapedBytes.append(line, bytes);
        }
    }

    /** Whether a chunk is one line that starts with {@code $}, is printable ASCII and ends with CR LF. */
    private static boolean isWholeSentence(byte[] bytes) {
        int end = bytes.length - 2;
        if (end < 1 || bytes[0] != '$' || bytes[end] != '\r' || bytes[end + 1] != '\n') {
            return false;
        }
        for (int i = 0; i < end; i++) {
            if (bytes[i] < ' ' || bytes[i] > '~') {
                return false;
            }
        }
        return true;
    }
}
