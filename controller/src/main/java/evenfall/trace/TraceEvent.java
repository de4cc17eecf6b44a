package evenfall.trace;

/** Stub. */
@SuppressWarnings("ArrayRecordComponent")
public sealed interface TraceEvent {
    long timeUs();

    record Bytes(long timeUs, String port, byte[] bytes) implements TraceEvent {}

    record PortLost(long timeUs, String port) implements TraceEvent {}

    record PortFound(long timeUs, String port) implements TraceEvent {}

    record Dropped(long timeUs, String port, long bytes) implements TraceEvent {}

    record End(long timeUs) implements TraceEvent {}
}
