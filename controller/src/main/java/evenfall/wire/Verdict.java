package evenfall.wire;

/** What became of a sentence. */
enum Verdict {
    ACCEPTED,
    IGNORED,
    CHECKSUM,
    MALFORMED,
    TOO_LONG
}
