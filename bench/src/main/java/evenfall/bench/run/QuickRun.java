package evenfall.bench.run;

import evenfall.bench.received.Message;
import evenfall.bench.received.Report;
import evenfall.bench.score.Score;
import evenfall.bench.score.Scoring;
import evenfall.config.ConfigException;
import evenfall.judge.Alert;
import evenfall.monitor.Live;
import evenfall.monitor.Outputs;
import evenfall.replay.TraceReplay;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.sim.feed.TraceFeed;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.world.Emission;
import evenfall.sim.world.World;
import evenfall.trace.TraceEvent;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The simulator's bytes, with its own time stamps, through the core and the message writer in this process. */
final class QuickRun {
    /** Stands in the rig file where a device would; nothing opens it at this pace. */
    private static final Runner.Address NO_BROKER = new Runner.Address("127.0.0.1", 1883);

    private final Scenario scenario;
    private final Optional<Path> keep;

    QuickRun(Scenario scenario, Optional<Path> keep) {
        this.scenario = scenario;
        this.keep = keep;
    }

    RunResult run() throws IOException, ConfigException {
        long startNs = System.nanoTime();
        String rigText = scenario.rigYaml(Map.of(), NO_BROKER.host(), NO_BROKER.port(), Optional.empty());
        // By way of the text, as the monitor's own process gets it.
        Rig rig = RigFile.parse("rig.yaml", rigText, Path.of(""));
        Scoring scoring = new Scoring(scenario);
        World world = new World(scenario, scoring.truth());
        List<Message> messages = new ArrayList<>();
        long[] nowUs = new long[1];
        List<String> remarks = new ArrayList<>();
        TraceReplay.Outcome outcome;
        try (Keeping kept = Keeping.in(keep)) {
            kept.text("rig.yaml", rigText);
            Source source = new Source(world, kept.trace(scenario), nowUs);
            outcome = TraceReplay.run(
                    rig,
                    source::next,
                    (topic, payload, retained, delivery) -> messages.add(
                            new Message(nowUs[0], topic, new String(payload.bytes(), StandardCharsets.UTF_8))),
                    new Unheard(),
                    (timeUs, unexpected) -> remarks.add("the core was started anew after " + unexpected));
            kept.messages(messages);
        }
        double driveS = seconds(startNs);
        long scoreNs = System.nanoTime();
        Report report = Report.onOneClock(messages).until(scenario.seconds());
        Score score = scoring.score(report);
        return new RunResult(
                scenario.name(),
                scenario.title(),
                scenario.seed(),
                scenario.seconds(),
                scenario.belief().outlet().id(),
                Pace.MAX,
                score,
                scoring.course(),
                report,
                outcome.digest(),
                List.of(new RunResult.Time("drive", driveS), new RunResult.Time("score", seconds(scoreNs))),
                remarks);
    }

    private static double seconds(long sinceNs) {
        return (System.nanoTime() - sinceNs) / 1e9;
    }

    /** Steps the world whenever the core wants more. */
    private static final class Source {
        private final World world;
        private final @Nullable TraceFeed trace;
        private final long[] nowUs;
        private final ArrayDeque<Emission> waiting = new ArrayDeque<>();
        private boolean ended;

        Source(World world, @Nullable TraceFeed trace, long[] nowUs) {
            this.world = world;
            this.trace = trace;
            this.nowUs = nowUs;
        }

        @Nullable
        TraceEvent next() {
            while (waiting.isEmpty() && world.step(waiting::add)) {
                // The next step may bring something.
            }
            Emission emission = waiting.poll();
            if (emission == null) {
                return end();
            }
            if (trace != null) {
                trace.accept(emission);
            }
            nowUs[0] = emission.timeUs();
            return new TraceEvent.Bytes(emission.timeUs(), emission.port(), emission.bytes());
        }

        private @Nullable TraceEvent end() {
            if (ended) {
                return null;
            }
            ended = true;
            nowUs[0] = world.endUs();
            if (trace != null) {
                trace.end(world.endUs());
            }
            return new TraceEvent.End(world.endUs());
        }
    }

    private static final class Unheard implements Outputs {
        @Override
        public void live(Live live) {
            // The messages say it.
        }

        @Override
        public void raised(Alert alert) {
            // The messages say it.
        }

        @Override
        public void cleared(Alert alert, long clearedUs) {
            // The messages say it.
        }
    }
}
