package evenfall.app;

import evenfall.message.Status;
import evenfall.trace.TraceEvent;
import evenfall.trace.TraceWriter;
import java.io.IOException;
import java.io.Writer;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Records what the core is fed, in the order in which it is fed, if a recording is wanted. A full card ends the recording, not the
 * watching.
 */
final class Recorder {
    private static final long FLUSH_US = 1_000_000;

    private @Nullable Writer file;
    private final @Nullable TraceWriter trace;
    private final Consumer<String> complaints;
    private Status.Trace state;
    private long flushedUs;

    /**
     * @param file null when nothing is to be recorded
     * @param remark goes at the head of the recording
     * @param complaints gets one line when the recording fails
     */
    Recorder(@Nullable Writer file, String remark, Consumer<String> complaints) {
        this.file = file;
        this.trace = file == null ? null : new TraceWriter(file);
        this.complaints = complaints;
        this.state = file == null ? Status.Trace.OFF : Status.Trace.WRITING;
        attempt((to, events) -> events.remark(remark));
    }

    Status.Trace state() {
        return state;
    }

    void record(TraceEvent event) {
        attempt((to, events) -> events.write(event));
    }

    /** At most a second of events is lost when the process is killed. */
    void flushWhenDue(long nowUs) {
        if (nowUs - flushedUs >= FLUSH_US) {
            flushedUs = nowUs;
            attempt((to, events) -> to.flush());
        }
    }

    void close() {
        attempt((to, events) -> to.close());
        file = null;
    }

    @FunctionalInterface
    private interface Step {
        void on(Writer to, TraceWriter events) throws IOException;
    }

    private void attempt(Step step) {
        if (file == null || trace == null) {
            return;
        }
        try {
            step.on(file, trace);
        } catch (IOException e) {
            file = null;
            state = Status.Trace.FAILED;
            complaints.accept("the recording failed and has ended: " + e.getMessage());
        }
    }
}
