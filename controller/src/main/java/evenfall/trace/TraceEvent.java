package evenfall.trace;

import java.util.Arrays;
import java.util.Objects;

/** One input of the monitor and when it came. */
public sealed interface TraceEvent {

    /** Returns the microseconds since the start of the recording, 0 or more. */
    long timeUs();

    /**
     * A chunk of bytes from a port, as it was read. The array is neither copied in nor out: whoever has the event must
     * not change it. Two are equal when their bytes are.
     *
     * @param port the port's name in the rig file
     * @param bytes the chunk, at most {@link #LONGEST} bytes
     */
    @SuppressWarnings("ArrayRecordComponent") // replay makes one per chunk, and a copy each way would double the work
    record Bytes(long timeUs, String port, byte[] bytes) implements TraceEvent {

        /** The longest chunk; no serial port hands over as many at once. */
        public static final int LONGEST = 65_536;

        public Bytes {
            Checks.time(timeUs);
            Checks.port(port);
            Objects.requireNonNull(bytes);
            if (bytes.length > LONGEST) {
                throw new IllegalArgumentException(
                        "a chunk of " + bytes.length + " bytes; at most " + LONGEST + " are allowed");
            }
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Bytes that
                    && timeUs == that.timeUs
                    && port.equals(that.port)
                    && Arrays.equals(bytes, that.bytes);
        }

        @Override
        public int hashCode() {
            return (Long.hashCode(timeUs) * 31 + port.hashCode()) * 31 + Arrays.hashCode(bytes);
        }

        @Override
        public String toString() {
            return timeUs + " " + port + " " + EscapedBytes.escape(bytes);
        }
    }

    /** The port was closed or unplugged. */
    record PortLost(long timeUs, String port) implements TraceEvent {
        public PortLost {
            Checks.time(timeUs);
            Checks.port(port);
        }
    }

    /** The port was opened. */
    record PortFound(long timeUs, String port) implements TraceEvent {
        public PortFound {
            Checks.time(timeUs);
            Checks.port(port);
        }
    }

    /**
     * A queue overflowed and bytes of a port were dropped.
     *
     * @param bytes how many, 1 or more
     */
    record Dropped(long timeUs, String port, long bytes) implements TraceEvent {
        public Dropped {
            Checks.time(timeUs);
            Checks.port(port);
            if (bytes < 1) {
                throw new IllegalArgumentException("dropped " + bytes + " bytes; 1 or more are allowed");
            }
        }
    }

    /** The recording ended on purpose, and this is how long it lasted. */
    record End(long timeUs) implements TraceEvent {
        public End {
            Checks.time(timeUs);
        }
    }
}
