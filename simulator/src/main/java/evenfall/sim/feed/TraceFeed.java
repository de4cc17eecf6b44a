package evenfall.sim.feed;

import evenfall.sim.world.Emission;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.zip.GZIPOutputStream;

/**
 * Writes a trace: text, one event a line, {@code <µs since start> <port> <sentence>}, remarks behind {@code #}, and {@code <µs> -
 * end} when the run has come to its end. Bytes that are not one whole sentence stand as {@code bytes:} and text in which all but
 * plain characters are {@code %} and two hexadecimal digits. The form is that of the controller's {@code evenfall.trace}.
 */
public final class TraceFeed implements Feed {
    private static final String HEX = "0123456789ABCDEF";

    private final OutputStream out;
    private final StringBuilder line = new StringBuilder(128);
    private long lastUs;

    /** @param out taken over: closed when this is closed */
    public TraceFeed(OutputStream out) {
        this.out = out;
    }

    /** A trace in a new file, compressed when its name ends in {@code .gz}. */
    public static TraceFeed to(Path file) throws IOException {
        OutputStream bytes = Files.newOutputStream(file);
        boolean packed = file.toString().toLowerCase(Locale.ROOT).endsWith(".gz");
        return new TraceFeed(new BufferedOutputStream(packed ? new GZIPOutputStream(bytes) : bytes, 1 << 16));
    }

    /** Writes one line that says something to people. */
    public void remark(String text) {
        line.setLength(0);
        line.append("# ").append(text.replace('\r', ' ').replace('\n', ' '));
        write();
    }

    /** @throws IllegalArgumentException when it comes before the one before it */
    @Override
    public void accept(Emission emission) {
        if (emission.timeUs() < lastUs) {
            throw new IllegalArgumentException("an emission at " + emission.timeUs() + " µs after one at " + lastUs);
        }
        lastUs = emission.timeUs();
        byte[] bytes = emission.bytes();
        line.setLength(0);
        line.append(lastUs).append(' ').append(emission.port()).append(' ');
        if (isWholeSentence(bytes)) {
            for (int i = 0; i < bytes.length - 2; i++) {
                line.append((char) bytes[i]);
            }
        } else {
            line.append("bytes:");
            for (byte b : bytes) {
                appendEscaped(b);
            }
        }
        write();
    }

    private static boolean isWholeSentence(byte[] bytes) {
        int length = bytes.length - 2;
        if (length < 1 || bytes[0] != '$' || bytes[length] != '\r' || bytes[length + 1] != '\n') {
            return false;
        }
        for (int i = 0; i < length; i++) {
            if (bytes[i] < ' ' || bytes[i] > '~') {
                return false;
            }
        }
        return true;
    }

    private void appendEscaped(byte b) {
        if (b > ' ' && b <= '~' && b != '%') {
            line.append((char) b);
        } else {
            line.append('%').append(HEX.charAt(b >> 4 & 0xf)).append(HEX.charAt(b & 0xf));
        }
    }

    /** Writes that the run has ended. */
    public void end(long timeUs) {
        line.setLength(0);
        line.append(Math.max(timeUs, lastUs)).append(" - end");
        write();
    }

    private void write() {
        try {
            out.write(line.append('\n').toString().getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException("the trace cannot be written: " + e.getMessage(), e);
        }
    }

    /** None: a trace waits for its disk. */
    @Override
    public long droppedBytes() {
        return 0;
    }

    @Override
    public void close() throws IOException {
        out.close();
    }
}
