package evenfall.bench.received;

/**
 * What the monitor's decoders counted, all ports together, by the last {@code live} message.
 *
 * @param sentences lines that start with {@code $}
 * @param accepted understood and used
 * @param ignored valid, of a kind not used
 * @param rejectedChecksum the checksum did not agree
 * @param rejectedMalformed no sentence in form
 * @param rejectedTooLong longer than a sentence may be
 */
public record WireTally(
        long sentences,
        long accepted,
        long ignored,
        long rejectedChecksum,
        long rejectedMalformed,
        long rejectedTooLong) {
    public static final WireTally NONE = new WireTally(0, 0, 0, 0, 0, 0);

    public long rejected() {
        return rejectedChecksum + rejectedMalformed + rejectedTooLong;
    }
}
