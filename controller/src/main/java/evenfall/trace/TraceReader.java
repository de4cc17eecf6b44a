package evenfall.trace;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads a trace, line by line. For one thread. */
public final class TraceReader implements TraceSource {

    static final String BYTES_MARK = "bytes:";

    private static final String LINE_FORM = "<microseconds> <port> <sentence>, "
            + "<microseconds> <port> bytes:<escaped>, lost, found or dropped:<bytes>, "
            + "<microseconds> - end, or # and a remark";

    /** A chunk of the longest kind, all escaped, and room for its time and port. */
    private static final int LONGEST_LINE = 3 * TraceEvent.Bytes.LONGEST + 128;

    private static final int LONGEST_NUMBER = 18;

    /** Star and two digits. */
    private static final int CHECKSUM = 3;

    /** How far {@link #isRawLog} looks for a first line that says something. */
    private static final int LOOK_AHEAD = 65_536;

    private final LineInput input;
    private final String name;
    private final List<byte[]> portBytes = new ArrayList<>();
    private final List<String> portNames = new ArrayList<>();
    private long lastUs;
    private boolean closed;
    private @Nullable TraceEnd torn;
    private @Nullable TraceEnd end;

    /**
     * Makes a reader.
     *
     * @param in a trace, compressed or not; is read, never closed
     * @param name the file's name, for messages
     * @throws IOException when the stream cannot be read
     */
    public TraceReader(InputStream in, String name) throws IOException {
        this.input = new LineInput(PlainInput.of(in), name, LONGEST_LINE);
        this.name = name;
    }

    /**
     * Returns whether a stream is a raw log of a receiver, which has no times: its first line that is neither empty nor
     * starts with {@code #} starts with {@code $} or {@code !}. The stream is set back to where it was.
     *
     * @param plain not compressed, and able to be set back
     * @throws IllegalArgumentException when it cannot be set back
     * @throws IOException when it cannot be read
     */
    public static boolean isRawLog(InputStream plain) throws IOException {
        if (!plain.markSupported()) {
            throw new IllegalArgumentException("a stream that cannot be set back");
        }
        plain.mark(LOOK_AHEAD);
        byte[] head = plain.readNBytes(LOOK_AHEAD);
        plain.reset();
        boolean lineStart = true;
        boolean remark = false;
        for (byte b : head) {
            if (b == '\n' || b == '\r') {
                lineStart = true;
                remark = false;
            } else if (lineStart && b == '#') {
                lineStart = false;
                remark = true;
            } else if (!remark) {
                return b == '$' || b == '!';
            }
        }
        return false;
    }

    @Override
    public @Nullable TraceEvent next() throws IOException {
        if (end != null) {
            return null;
        }
        while (input.advance()) {
            byte[] line = input.line();
            int length = input.length();
            if (!input.terminated()) {
                if (length >= LONGEST_LINE) {
                    throw wrong("a line of more than " + LONGEST_LINE + " bytes", LINE_FORM);
                }
                TraceEvent last = lastLine(line, length);
                if (last != null) {
                    return last;
                }
                break;
            }
            length = withoutReturn(line, length - 1);
            if (length == 0 || line[0] == '#') {
                continue;
            }
            if (closed) {
                throw wrong("a line after the end", "# and a remark");
            }
            return parse(line, length);
        }
        if (torn != null) {
            end = torn;
        } else if (input.broken()) {
            end = new TraceEnd.TornTail(input.number(), 0);
        } else {
            end = closed ? new TraceEnd.Closed() : new TraceEnd.Open();
        }
        return null;
    }

    /**
     * Returns what a last line without a line end says: all of it where it is whole, as an editor may leave it; a sentence
     * also where it is torn, so that the decoder counts it; null where nothing can be made of it.
     */
    private @Nullable TraceEvent lastLine(byte[] line, int fullLength) throws TraceFormatException {
        int length = withoutReturn(line, fullLength);
        if (length == 0 || line[0] == '#') {
            return null;
        }
        if (closed) {
            throw wrong("a line after the end", "# and a remark");
        }
        int afterTime = indexOfBlank(line, 0, length);
        int afterPort = afterTime < 0 ? -1 : indexOfBlank(line, afterTime + 1, length);
        int from = afterPort + 1;
        boolean sentence = afterPort > 0 && from < length && line[from] == '$';
        boolean whole = sentence
                ? length - from > CHECKSUM && line[length - CHECKSUM] == '*'
                : afterPort > 0
                        && (is(line, from, length, "lost")
                                || is(line, from, length, "found")
                                || is(line, from, length, "end"));
        if (!whole) {
            torn = new TraceEnd.TornTail(input.number(), fullLength);
        }
        return whole || sentence ? parse(line, length) : null;
    }

    /** An editor's line end; no event ends so, since CR is escaped. */
    private static int withoutReturn(byte[] line, int length) {
        return length > 0 && line[length - 1] == '\r' ? length - 1 : length;
    }

    @Override
    public TraceEnd end() {
        if (end == null) {
            throw new IllegalStateException("the trace is not read to its end yet");
        }
        return end;
    }

    private TraceEvent parse(byte[] line, int length) throws TraceFormatException {
        int afterTime = indexOfBlank(line, 0, length);
        int afterPort = afterTime < 0 ? -1 : indexOfBlank(line, afterTime + 1, length);
        if (afterPort < 0) {
            throw wrong("not an event: '" + text(line, 0, length) + "'", LINE_FORM);
        }
        long timeUs = number(line, 0, afterTime);
        if (timeUs < 0) {
            throw wrong("time '" + text(line, 0, afterTime) + "'", "microseconds, digits only");
        }
        if (timeUs < lastUs) {
            throw wrong("time " + timeUs + " after " + lastUs, "times that never fall");
        }
        String allowed = Checks.allowedInsteadOf(timeUs, lastUs);
        if (allowed != null) {
            throw wrong("time " + timeUs + " after " + lastUs + " is too far off", allowed);
        }
        int from = afterPort + 1;
        lastUs = timeUs;
        if (afterPort - afterTime == 2 && line[afterTime + 1] == '-') {
            if (!is(line, from, length, "end")) {
                throw wrong("'" + text(line, from, length) + "' without a port", "end");
            }
            closed = true;
            return new TraceEvent.End(timeUs);
        }
        return event(timeUs, port(line, afterTime + 1, afterPort), line, from, length);
    }

    private TraceEvent event(long timeUs, String port, byte[] line, int from, int to) throws TraceFormatException {
        if (from < to && line[from] == '$') {
            return new TraceEvent.Bytes(timeUs, port, sentence(line, from, to));
        }
        if (startsWith(line, from, to, BYTES_MARK)) {
            byte[] bytes = EscapedBytes.unescape(line, from + BYTES_MARK.length(), to);
            if (bytes == null) {
                throw wrong(
                        "bytes that are not escaped as they must be",
                        "printable ASCII without blank, % always with two hexadecimal digits");
            }
            if (bytes.length > TraceEvent.Bytes.LONGEST) {
                throw wrong(
                        "a chunk of " + bytes.length + " bytes", "at most " + TraceEvent.Bytes.LONGEST + " in a chunk");
            }
            return new TraceEvent.Bytes(timeUs, port, bytes);
        }
        if (is(line, from, to, "lost")) {
            return new TraceEvent.PortLost(timeUs, port);
        }
        if (is(line, from, to, "found")) {
            return new TraceEvent.PortFound(timeUs, port);
        }
        String droppedMark = "dropped:";
        if (startsWith(line, from, to, droppedMark)) {
            long bytes = number(line, from + droppedMark.length(), to);
            if (bytes < 1) {
                throw wrong("'" + text(line, from, to) + "'", "dropped: and a number of bytes, 1 or more");
            }
            return new TraceEvent.Dropped(timeUs, port, bytes);
        }
        throw wrong(
                "'" + text(line, from, to) + "'",
                "a sentence that starts with $, bytes:<escaped>, lost, found or dropped:<bytes>");
    }

    private byte[] sentence(byte[] line, int from, int to) throws TraceFormatException {
        int length = to - from;
        if (!WideBytes.allPrintable(line, from, to)) {
            throw wrong("a sentence with a character that is not printable ASCII", "bytes:<escaped> for such bytes");
        }
        if (length + 2 > TraceEvent.Bytes.LONGEST) {
            throw wrong("a sentence of " + length + " characters", "at most " + (TraceEvent.Bytes.LONGEST - 2));
        }
        byte[] bytes = new byte[length + 2];
        System.arraycopy(line, from, bytes, 0, length);
        bytes[length] = '\r';
        bytes[length + 1] = '\n';
        return bytes;
    }

    /** A trace has few ports and very many lines: each name is made once. */
    private String port(byte[] line, int from, int to) throws TraceFormatException {
        for (int i = 0; i < portBytes.size(); i++) {
            byte[] known = portBytes.get(i);
            if (Arrays.equals(known, 0, known.length, line, from, to)) {
                return portNames.get(i);
            }
        }
        String port = text(line, from, to);
        if (!Checks.isPort(port)) {
            throw wrong("port name '" + port + "'", Checks.PORT_FORM);
        }
        portBytes.add(Arrays.copyOfRange(line, from, to));
        portNames.add(port);
        return port;
    }

    private TraceFormatException wrong(String what, String allowed) {
        return new TraceFormatException(name, input.number(), what, allowed);
    }

    private static int indexOfBlank(byte[] line, int from, int to) {
        for (int i = from; i < to; i++) {
            if (line[i] == ' ') {
                return i;
            }
        }
        return -1;
    }

    /** Returns a number of digits only, or −1 where it is none. */
    private static long number(byte[] line, int from, int to) {
        if (from >= to || to - from > LONGEST_NUMBER) {
            return -1;
        }
        long value = 0;
        for (int i = from; i < to; i++) {
            int digit = line[i] - '0';
            if (digit < 0 || digit > 9) {
                return -1;
            }
            value = value * 10 + digit;
        }
        return value;
    }

    private static boolean is(byte[] line, int from, int to, String word) {
        return to - from == word.length() && startsWith(line, from, to, word);
    }

    private static boolean startsWith(byte[] line, int from, int to, String word) {
        if (to - from < word.length()) {
            return false;
        }
        for (int i = 0; i < word.length(); i++) {
            if (line[from + i] != word.charAt(i)) {
                return false;
            }
        }
        return true;
    }

    /** The first characters of a part, for a message of one line. */
    private static String text(byte[] line, int from, int to) {
        int shown = Math.min(to, from + 60);
        byte[] clean = Arrays.copyOfRange(line, from, shown);
        for (int i = 0; i < clean.length; i++) {
            if (clean[i] < ' ' || clean[i] > '~') {
                clean[i] = '?';
            }
        }
        return new String(clean, StandardCharsets.US_ASCII) + (shown < to ? "..." : "");
    }
}
