package evenfall.wire;

/** Placeholder of the shape; the wire branch brings the real one. */
public record WireCounts(
        long sentences,
        long accepted,
        long ignored,
        long rejectedChecksum,
        long rejectedMalformed,
        long rejectedTooLong,
        long otherLines,
        long otherBytes) {}
