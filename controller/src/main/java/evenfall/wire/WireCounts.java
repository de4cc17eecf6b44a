package evenfall.wire;

/**
 * What one port brought since its {@link SentenceStream} was made. All are counts since then and never fall.
 *
 * <p>{@code sentences == accepted + ignored + rejectedChecksum + rejectedMalformed + rejectedTooLong} always holds.
 *
 * @param sentences lines that started with {@code $} and are decided; a half-read line is not counted yet
 * @param accepted sentences of a kind in use whose fields are good; each was handed to the handler once
 * @param ignored sentences in a sound envelope, of a kind not in use
 * @param rejectedChecksum sentences whose checksum does not match
 * @param rejectedMalformed sentences without a checksum, with characters outside printable ASCII, torn by the start of
 *     the next one, or of a kind in use with fields that its table does not allow
 * @param rejectedTooLong sentences longer than the envelope allows
 * @param otherLines lines that did not start with {@code $}, empty ones too; counted at their first byte
 * @param otherBytes bytes of those lines, line ends included
 */
public record WireCounts(
        long sentences,
        long accepted,
        long ignored,
        long rejectedChecksum,
        long rejectedMalformed,
        long rejectedTooLong,
        long otherLines,
        long otherBytes) {

    /** Nothing read yet. */
    public static final WireCounts NONE = new WireCounts(0, 0, 0, 0, 0, 0, 0, 0);

    /** Returns all rejected sentences, whatever the reason. */
    public long rejected() {
        return rejectedChecksum + rejectedMalformed + rejectedTooLong;
    }

    /** Returns the counts of this port and the other together. */
    public WireCounts plus(WireCounts other) {
        return new WireCounts(
                sentences + other.sentences,
                accepted + other.accepted,
                ignored + other.ignored,
                rejectedChecksum + other.rejectedChecksum,
                rejectedMalformed + other.rejectedMalformed,
                rejectedTooLong + other.rejectedTooLong,
                otherLines + other.otherLines,
                otherBytes + other.otherBytes);
    }
}
