package evenfall.bench.feed;

import evenfall.sim.feed.Feed;
import evenfall.sim.feed.RealTimePace;
import evenfall.sim.feed.TraceFeed;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.world.Emission;
import evenfall.sim.world.RowLedger;
import evenfall.sim.world.TruthSample;
import evenfall.sim.world.TruthSink;
import evenfall.sim.world.World;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.DoubleConsumer;

/** Runs a scenario's sensors into a feed. */
public final class Feeding {
    private Feeding() {}

    /**
     * What went out.
     *
     * @param seconds how long the scenario lasted, s
     * @param sentences by port
     * @param bytes all together
     * @param droppedBytes that nobody took
     * @param worstLateMs how late the simulator was at worst, ms; 0 for a trace, which waits for nobody
     */
    public record Fed(double seconds, Map<String, Long> sentences, long bytes, long droppedBytes, double worstLateMs) {}

    /** As fast as it goes, into a trace; packed where the name ends in {@code .gz}. */
    public static Fed intoTrace(Scenario scenario, Path file) throws IOException {
        try (TraceFeed trace = TraceFeed.to(file)) {
            trace.remark("scenario " + scenario.name() + ", seed " + scenario.seed() + ", outlet "
                    + scenario.belief().outlet().id() + "; simulated, by the simulator's own clock");
            World world = new World(scenario, new Nowhere());
            Tally tally = new Tally();
            world.run(emission -> {
                trace.accept(emission);
                tally.count(emission);
            });
            trace.end(world.endUs());
            return tally.fed(world.endUs(), 0, 0);
        } catch (UncheckedIOException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    /**
     * By the clock.
     *
     * @param speed how many times faster than in the field; 1 is real time
     * @param progress told now and then how far it has come, s
     */
    public static Fed byTheClock(Scenario scenario, Feed feed, double speed, DoubleConsumer progress)
            throws IOException, InterruptedException {
        World world = new World(scenario, new Nowhere());
        RealTimePace pace = new RealTimePace(speed);
        Tally tally = new Tally();
        ArrayDeque<Emission> waiting = new ArrayDeque<>();
        try {
            hold(pace, 0);
            while (world.step(waiting::add)) {
                while (!waiting.isEmpty()) {
                    Emission emission = waiting.remove();
                    hold(pace, emission.timeUs());
                    feed.accept(emission);
                    tally.count(emission);
                    progress.accept(emission.timeUs() / 1e6);
                }
            }
            hold(pace, world.endUs());
        } catch (UncheckedIOException e) {
            throw new IOException(e.getMessage(), e);
        }
        return tally.fed(world.endUs(), feed.droppedBytes(), pace.worstLateUs() / 1e3);
    }

    private static void hold(RealTimePace pace, long timeUs) throws InterruptedException {
        if (!pace.await(timeUs)) {
            throw new InterruptedException("the feed was broken off");
        }
    }

    private static final class Tally {
        private final TreeMap<String, Long> sentences = new TreeMap<>();
        private long bytes;

        void count(Emission emission) {
            sentences.merge(emission.port(), 1L, Long::sum);
            bytes += emission.bytes().length;
        }

        Fed fed(long endUs, long dropped, double worstLateMs) {
            return new Fed(endUs / 1e6, sentences, bytes, dropped, worstLateMs);
        }
    }

    private static final class Nowhere implements TruthSink {
        @Override
        public void sample(TruthSample sample) {
            // Nobody asks what was true.
        }

        @Override
        public void end(RowLedger ledger) {
            // Nobody asks what was true.
        }
    }
}
