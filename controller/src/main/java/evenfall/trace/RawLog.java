package evenfall.trace;

import evenfall.wire.SentenceTime;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * A raw log of a GNSS receiver, as it came off the port, turned into events on port {@value #PORT}: one chunk a line,
 * with its line end as it stands in the log. Lines that start with {@code #} are remarks of whoever kept the log and
 * are left out. A log that stops without a line end gets one, as a chunk of its own: so its last line is judged too,
 * accepted when it is whole and counted as rejected when it is torn.
 *
 * <p>Such a log has no times of arrival, so they are taken from the UTC time of day in the sentences (RMC, GGA, GNS,
 * ZDA, GBS, GST, GLL) with a right checksum:
 *
 * <ul>
 *   <li>the first time read is time 0, and so is everything before it;
 *   <li>a line without a time has the time of the line before it;
 *   <li>a time up to 60 s later moves on by the difference, across midnight too;
 *   <li>a time up to 10 s earlier changes nothing: within one burst some receivers print this second's RMC before the
 *       last second's GLL;
 *   <li>any other time, further back or further on, is a jump of the receiver's clock or a gap in the log: it moves on by
 *       1 s and counts on from there. Time never goes back.
 * </ul>
 *
 * Dates are not looked at. All together may be 31 days at most. After the last line an {@link TraceEvent.End} follows at its time.
 */
public final class RawLog implements TraceSource {

    /** The port that all events of a raw log are on. */
    public static final String PORT = "gnss";

    private static final int DAY_MS = 86_400_000;
    private static final int LARGEST_STEP_MS = 60_000;
    private static final int LARGEST_LAG_MS = 10_000;
    private static final int JUMP_MS = 1_000;
    private static final int NO_TIME = -1;

    /** Far above any sentence; a line without an end comes in pieces of this. */
    private static final int LONGEST_LINE = 4_096;

    private static final byte[] LINE_END = {'\n'};

    private final LineInput input;
    private final String name;
    private long timeMs;
    private int latestMs = NO_TIME;
    private boolean lineStart = true;
    private boolean inRemark;
    private boolean ended;
    private @Nullable TraceEnd end;

    /**
     * Makes a reader.
     *
     * @param in a raw log, compressed or not; is read, never closed
     * @param name the file's name, for messages
     * @throws IOException when the stream cannot be read
     */
    public RawLog(InputStream in, String name) throws IOException {
        this.input = new LineInput(PlainInput.of(in), name, LONGEST_LINE);
        this.name = name;
    }

    @Override
    public @Nullable TraceEvent next() throws IOException {
        if (ended) {
            end = input.broken() ? new TraceEnd.TornTail(input.number(), 0) : new TraceEnd.Open();
            return null;
        }
        while (input.advance()) {
            boolean startsHere = lineStart;
            lineStart = input.terminated();
            if (startsHere) {
                inRemark = input.line()[0] == '#';
            }
            if (inRemark) {
                continue;
            }
            OptionalInt utc = SentenceTime.timeOfDayMs(input.line(), 0, input.length());
            if (utc.isPresent()) {
                moveTo(utc.getAsInt());
            }
            return new TraceEvent.Bytes(timeMs * 1000, PORT, Arrays.copyOf(input.line(), input.length()));
        }
        if (!lineStart) {
            lineStart = true;
            if (!inRemark) {
                return new TraceEvent.Bytes(timeMs * 1000, PORT, LINE_END.clone());
            }
        }
        ended = true;
        return new TraceEvent.End(timeMs * 1000);
    }

    @Override
    public TraceEnd end() {
        if (end == null) {
            throw new IllegalStateException("the log is not read to its end yet");
        }
        return end;
    }

    private void moveTo(int utcMs) throws TraceFormatException {
        if (latestMs == NO_TIME) {
            latestMs = utcMs;
            return;
        }
        int differenceMs = utcMs - latestMs;
        int aheadMs = differenceMs < 0 ? differenceMs + DAY_MS : differenceMs;
        if (aheadMs >= DAY_MS - LARGEST_LAG_MS) {
            return;
        }
        timeMs += aheadMs <= LARGEST_STEP_MS ? aheadMs : JUMP_MS;
        latestMs = utcMs;
        if (timeMs > Checks.LATEST_US / 1000) {
            throw new TraceFormatException(
                    name, input.number(), "the times of its sentences add up to too much", Checks.LATEST_ALLOWED);
        }
    }
}
