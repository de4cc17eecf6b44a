package evenfall.trace;

import java.io.IOException;
import java.util.Arrays;

/**
 * Cuts a stream into lines without making an object per line. The line stands in {@link #line()} from 0 to
 * {@link #length()} until the next one is read.
 */
final class LineInput {

    private final PlainInput in;
    private final String name;
    private final int limit;
    private final byte[] chunk = new byte[65_536];
    private int at;
    private int end;
    private boolean drained;

    private byte[] line = new byte[256];
    private int length;
    private boolean terminated;
    private long number;

    /**
     * Makes a reader.
     *
     * @param limit the longest line; a longer one comes in pieces that are not terminated
     */
    LineInput(PlainInput in, String name, int limit) {
        this.in = in;
        this.name = name;
        this.limit = limit;
    }

    /** Reads the next line, line end included; false at the end of the stream. */
    boolean advance() throws IOException {
        length = 0;
        terminated = false;
        number++;
        while (length < limit && !terminated) {
            if (at == end && !fill()) {
                break;
            }
            int stop = Math.min(end, at + limit - length);
            int i = WideBytes.find((byte) '\n', chunk, at, stop);
            if (i < stop) {
                i++;
                terminated = true;
            }
            keep(i - at);
            at = i;
        }
        return length > 0;
    }

    byte[] line() {
        return line;
    }

    /** How long the line is, its line end included. */
    int length() {
        return length;
    }

    /** Whether the line has its line end. */
    boolean terminated() {
        return terminated;
    }

    /** The number of the line, from 1. */
    long number() {
        return number;
    }

    /** Whether the compressed data broke off before their end. */
    boolean broken() {
        return in.broken();
    }

    private void keep(int count) {
        if (line.length < length + count) {
            line = Arrays.copyOf(line, Math.max(2 * line.length, length + count));
        }
        System.arraycopy(chunk, at, line, length, count);
        length += count;
    }

    private boolean fill() throws IOException {
        if (drained) {
            return false;
        }
        int read = in.read(chunk, 0, chunk.length);
        if (read > 0) {
            at = 0;
            end = read;
            return true;
        }
        String damage = in.damage();
        if (damage != null) {
            throw new TraceFormatException(
                    name, number, "the compressed data are damaged here (" + damage + ")", "gzip data or plain text");
        }
        drained = true;
        return false;
    }
}
