package evenfall.message;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How the box itself fares.
 *
 * @param state what it does
 * @param atUs event time, µs since the box started
 * @param version of the program
 * @param ports each port of the rig file, in its order
 * @param trace what becomes of the recording of inputs
 * @param restarts how often the core was restarted since the box started
 * @param fault the last unexpected thing, in one line; null when there was none
 * @param messagesDropped messages that never reached the broker, because it was away for too long
 */
public record Status(
        State state,
        long atUs,
        String version,
        List<Port> ports,
        Trace trace,
        long restarts,
        @Nullable String fault,
        long messagesDropped) {

    public Status {
        ports = List.copyOf(ports);
    }

    /** What the box does. A third word, {@code gone}, is the broker's to say. */
    public enum State {
        RUNNING("running"),
        STOPPED("stopped");

        private final String word;

        State(String word) {
            this.word = word;
        }

        /** The word in the message. */
        public String word() {
            return word;
        }
    }

    /** What becomes of the recording of inputs. */
    public enum Trace {
        OFF("off"),
        WRITING("writing"),
        FAILED("failed");

        private final String word;

        Trace(String word) {
            this.word = word;
        }

        /** The word in the message. */
        public String word() {
            return word;
        }
    }

    /**
     * @param port its name
     * @param why why it is not open, in a few words; null when it is open
     * @param heardAgeUs since the last byte, µs; -1 where none ever came
     * @param droppedBytes bytes that the core was too slow to take
     */
    public record Port(String port, @Nullable String why, long heardAgeUs, long droppedBytes) {
        /** Whether bytes can come from it now. */
        public boolean open() {
            return why == null;
        }
    }
}
