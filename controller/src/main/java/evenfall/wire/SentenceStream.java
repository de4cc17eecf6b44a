package evenfall.wire;

import java.util.Objects;

/**
 * The decoder of one serial port: takes its bytes in whatever chunks they come and hands whole, checked sentences to a
 * handler.
 *
 * <p>It holds the half-read line between chunks in a buffer that never grows; how the bytes are cut into chunks changes
 * nothing. A sentence is refused at the first byte that shows it is bad; the rest of its line is passed over, up to the
 * line's end or the next {@code $}. No allocation, no exception in the steady state. For one thread.
 */
public final class SentenceStream {

    /** NMEA 0183 allows 82 characters from {@code $} to CR LF; the hub keeps to it. Without CR LF that is 80. */
    private static final int HUB_LIMIT = 80;

    /**
     * Other sentences may have 96 with CR LF: receivers that print eight decimals of a minute reach 86 in NOAA PSL's
     * ATOMIC 2020 cruise log, and 93 in gpsd's regression log nmea-rtk.log.
     */
    private static final int LIMIT = 94;

    private static final int AT_LINE_START = 0;
    private static final int IN_SENTENCE = 1;
    private static final int AFTER_CARRIAGE_RETURN = 2;
    private static final int IN_REJECTED_LINE = 3;
    private static final int IN_OTHER_LINE = 4;

    private final SentenceHandler handler;
    private final byte[] line = new byte[LIMIT];
    private final Decoder decoder = new Decoder();

    private int state = AT_LINE_START;
    private int length;
    private int sum;

    private long accepted;
    private long ignored;
    private long rejectedChecksum;
    private long rejectedMalformed;
    private long rejectedTooLong;
    private long otherLines;
    private long otherBytes;

    /** Makes a stream that stands at the start of a line. */
    public SentenceStream(SentenceHandler handler) {
        this.handler = Objects.requireNonNull(handler);
    }

    /**
     * Takes the next bytes of the port. The array is not kept.
     *
     * @throws IndexOutOfBoundsException when the range is not within the array
     */
    public void accept(byte[] bytes, int offset, int length) {
        Objects.checkFromIndexSize(offset, length, bytes.length);
        int end = offset + length;
        int at = offset;
        while (at < end) {
            at = switch (state) {
                case AT_LINE_START -> startLine(bytes, at);
                case IN_SENTENCE -> continueSentence(bytes, at, end);
                case AFTER_CARRIAGE_RETURN -> endAfterCarriageReturn(bytes, at);
                case IN_REJECTED_LINE -> passRejected(bytes, at, end);
                default -> passOther(bytes, at, end);
            };
        }
    }

    /**
     * Says that the bytes stopped here: the port was lost, a queue overflowed or the recording ended. A half-read
     * sentence counts as malformed, and the next byte starts a line.
     */
    public void cut() {
        if (state == IN_SENTENCE || state == AFTER_CARRIAGE_RETURN) {
            rejectedMalformed++;
        }
        state = AT_LINE_START;
    }

    /** Returns the counts up to the last byte taken. */
    public WireCounts counts() {
        return new WireCounts(
                accepted + ignored + rejectedChecksum + rejectedMalformed + rejectedTooLong,
                accepted,
                ignored,
                rejectedChecksum,
                rejectedMalformed,
                rejectedTooLong,
                otherLines,
                otherBytes);
    }

    /** Returns how many sentences came in a sound envelope up to the last byte taken. */
    public long readable() {
        return accepted + ignored;
    }

    private int startLine(byte[] bytes, int at) {
        if (bytes[at] == '$') {
            state = IN_SENTENCE;
            line[0] = '$';
            length = 1;
            sum = 0;
            return at + 1;
        }
        otherLines++;
        state = IN_OTHER_LINE;
        return at;
    }

    private int continueSentence(byte[] bytes, int at, int end) {
        int i = at;
        int xor = sum;
        byte c = 0;
        while (i < end) {
            c = bytes[i];
            if (c < ' ' || c == '$' || c == 0x7F) {
                break;
            }
            xor ^= c;
            i++;
        }
        sum = xor;
        int run = i - at;
        if (run > LIMIT - length) {
            return reject(Verdict.TOO_LONG, i);
        }
        System.arraycopy(bytes, at, line, length, run);
        length += run;
        if (length > HUB_LIMIT && Decoder.isOfHub(line)) {
            return reject(Verdict.TOO_LONG, i);
        }
        if (i == end) {
            return i;
        }
        switch (c) {
            case '\n' -> endSentence();
            case '\r' -> state = AFTER_CARRIAGE_RETURN;
            case '$' -> {
                return tear(i);
            }
            default -> {
                return reject(Verdict.MALFORMED, i);
            }
        }
        return i + 1;
    }

    private int endAfterCarriageReturn(byte[] bytes, int at) {
        if (bytes[at] == '\n') {
            endSentence();
            return at + 1;
        }
        return reject(Verdict.MALFORMED, at);
    }

    private int passRejected(byte[] bytes, int at, int end) {
        int i = at;
        while (i < end && bytes[i] != '\n' && bytes[i] != '$') {
            i++;
        }
        if (i == end) {
            return i;
        }
        state = AT_LINE_START;
        return bytes[i] == '\n' ? i + 1 : i;
    }

    private int passOther(byte[] bytes, int at, int end) {
        int next = passRejected(bytes, at, end);
        otherBytes += next - at;
        return next;
    }

    private int tear(int at) {
        rejectedMalformed++;
        state = AT_LINE_START;
        return at;
    }

    private int reject(Verdict why, int at) {
        count(why);
        state = IN_REJECTED_LINE;
        return at;
    }

    private void endSentence() {
        state = AT_LINE_START;
        Verdict verdict = decoder.decode(line, length, sum);
        count(verdict);
        if (verdict == Verdict.ACCEPTED) {
            decoder.deliver(handler);
        }
    }

    private void count(Verdict verdict) {
        switch (verdict) {
            case ACCEPTED -> accepted++;
            case IGNORED -> ignored++;
            case CHECKSUM -> rejectedChecksum++;
            case MALFORMED -> rejectedMalformed++;
            case TOO_LONG -> rejectedTooLong++;
        }
    }
}
