package evenfall.replay;

import evenfall.message.Publisher;
import evenfall.monitor.Outputs;
import evenfall.rig.Rig;
import evenfall.trace.TraceEvent;
import evenfall.wire.WireCounts;
import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** Feeds recorded events to the core as fast as it takes them. */
public final class TraceReplay {
    private TraceReplay() {}

    /** Where events come from, one after the other. */
    @FunctionalInterface
    public interface Source {
        /** The next event, or null after the last. */
        @Nullable
        TraceEvent next() throws IOException;
    }

    /**
     * @param endUs event time at the end, µs
     * @param messages how many were published
     * @param digest SHA-256 of them, see {@link evenfall.message.OutputDigest}
     * @param wire what the decoders counted
     * @param restarts how often the core was started anew
     */
    public record Outcome(long endUs, long messages, String digest, WireCounts wire, long restarts) {}

    /**
     * Replays to the end. Events without an {@link TraceEvent.End} (a recording that was cut) end with the last of them.
     *
     * @param publisher gets every message
     * @param also gets the outputs themselves
     * @throws IOException when the source fails
     * @throws CoreBrokenException as it would have been thrown when the trace was recorded
     */
    public static Outcome run(Rig rig, Source source, Publisher publisher, Outputs also, FaultListener faults)
            throws IOException {
        SteadyMonitor core = new SteadyMonitor(rig, publisher, also, faults);
        long timeUs = 0;
        boolean ended = false;
        for (TraceEvent event = source.next(); event != null && !ended; event = source.next()) {
            core.accept(event);
            timeUs = Math.max(timeUs, event.timeUs());
            ended = event instanceof TraceEvent.End;
        }
        if (!ended) {
            core.accept(new TraceEvent.End(timeUs));
        }
        return new Outcome(timeUs, core.messages(), core.digest(), core.wire(), core.restarts());
    }
}
