package evenfall.bench.replay;

import evenfall.bench.received.ReportedAlert;
import evenfall.config.ConfigException;
import evenfall.config.FileCheck;
import evenfall.replay.TraceReplay;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.trace.RawLog;
import evenfall.trace.TraceEvent;
import evenfall.trace.TraceSource;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Puts a recording through the core. */
public final class Replaying {
    private static final String RECEIVER_ONLY = "receiver-only.yaml";

    private Replaying() {}

    /** How fast. */
    public enum Pace {
        /** As fast as it goes. */
        MAX,
        /** Each event when its time has come. */
        REAL
    }

    /** What is watched. */
    public interface Watcher {
        /** An alert rose, or cleared: then its end is filled in. */
        void alert(ReportedAlert alert);

        /** The core met something that it should not, and was started anew. */
        void coreRestarted(double atS, String unexpected);
    }

    /** A rig with nothing but a receiver; invented. */
    public static Rig receiverOnly() {
        try (InputStream in = Replaying.class.getResourceAsStream("/evenfall/bench/replay/" + RECEIVER_ONLY)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks its own file " + RECEIVER_ONLY);
            }
            return RigFile.parse(RECEIVER_ONLY, new String(in.readAllBytes(), StandardCharsets.UTF_8), Path.of(""));
        } catch (IOException | ConfigException e) {
            throw new IllegalStateException("the program's own rig file is wrong: " + e.getMessage(), e);
        }
    }

    /**
     * @param file a trace or a receiver's raw log, packed by gzip or not
     * @throws ConfigException when there is no such file
     * @throws IOException when it cannot be read, is not a trace, or holds nothing
     */
    public static ReplayResult of(Path file, Rig rig, Pace pace, Watcher watcher) throws IOException, ConfigException {
        FileCheck.isReadable(file, file.toString(), "a trace, or a receiver's raw log");
        try (InputStream in = Files.newInputStream(file)) {
            TraceSource source = TraceSource.open(in, file.toString());
            TraceSource events = source.notEmpty(file.toString());
            GnssTally tally = new GnssTally();
            AlertList alerts = new AlertList(watcher::alert);
            Consumer<TraceEvent> wait = pace == Pace.REAL ? new Waiting() : event -> {};
            TraceReplay.Outcome outcome = TraceReplay.run(
                    rig,
                    () -> tapped(events, tally, wait),
                    (topic, payload, retained, delivery) -> {},
                    alerts,
                    (timeUs, unexpected) -> watcher.coreRestarted(timeUs / 1e6, unexpected.toString()));
            source.readAll(event -> {});
            return new ReplayResult(
                    file.toString(),
                    source instanceof RawLog,
                    outcome.endUs() / 1e6,
                    outcome.wire(),
                    tally.summary(),
                    alerts.alerts(),
                    outcome.messages(),
                    outcome.digest(),
                    source.end());
        }
    }

    private static @Nullable TraceEvent tapped(TraceSource source, GnssTally tally, Consumer<TraceEvent> wait)
            throws IOException {
        TraceEvent event = source.next();
        if (event != null) {
            tally.hear(event);
            wait.accept(event);
        }
        return event;
    }

    private static final class Waiting implements Consumer<TraceEvent> {
        private final long startNs = System.nanoTime();

        @Override
        public void accept(TraceEvent event) {
            long dueNs = startNs + event.timeUs() * 1000;
            long leftNs = dueNs - System.nanoTime();
            while (leftNs > 0 && !Thread.currentThread().isInterrupted()) {
                LockSupport.parkNanos(leftNs);
                leftNs = dueNs - System.nanoTime();
            }
        }
    }
}
