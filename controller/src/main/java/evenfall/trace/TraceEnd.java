package evenfall.trace;

/** How a recording ended. What was read before it counts in every case. */
public sealed interface TraceEnd {

    /** With its end line: the recording was closed on purpose. */
    record Closed() implements TraceEnd {}

    /** After a whole event, without an end line: the recorder was stopped hard, or the input is a raw log. */
    record Open() implements TraceEnd {}

    /**
     * In the middle of a line or of the compressed data: the power was cut. What had come of a sentence is handed on, for
     * the decoder to count it as malformed; what had come of anything else is left out.
     *
     * @param line the number of the torn line, from 1
     * @param bytes how many bytes of it there were
     */
    record TornTail(long line, int bytes) implements TraceEnd {}
}
