package evenfall.bench.console;

import evenfall.judge.Alert;
import evenfall.message.Delivery;
import evenfall.message.Payload;
import evenfall.message.Topics;
import evenfall.monitor.Live;
import evenfall.monitor.Outputs;
import evenfall.page.CabPage;
import evenfall.replay.SteadyMonitor;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.world.RowLedger;
import evenfall.sim.world.TruthSample;
import evenfall.sim.world.TruthSink;
import evenfall.sim.world.World;
import evenfall.trace.TraceEvent;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;

/**
 * The cab view over a simulated machine that is driven to a moment as fast as it goes and then held there: its newest message is said
 * again and again until {@link #fallSilent}.
 */
final class CabOnDesk implements AutoCloseable {
    private static final long STEP_US = 200_000;

    private final Topics topics;
    private final SteadyMonitor monitor;
    private final World world;
    private final ScheduledExecutorService voice = Executors.newSingleThreadScheduledExecutor();
    private final CabPage page;
    private volatile byte[] newest = {};
    private volatile Live live;

    CabOnDesk(Scenario scenario) throws Exception {
        Rig rig = RigFile.parse("rig.yaml", scenario.rigYaml(Map.of(), "127.0.0.1", 1, Optional.empty()), Path.of(""));
        topics = new Topics(rig.name());
        page = new CabPage(rig, new Rig.Page("127.0.0.1", 0, Optional.empty()), this::acknowledge);
        monitor = new SteadyMonitor(
                rig,
                (topic, payload, retained, delivery) -> {
                    page.board().publish(topic, payload, retained, delivery);
                    if (topic.equals(topics.live())) {
                        newest = payload.bytes();
                    }
                },
                new Newest(),
                (timeUs, unexpected) -> {
                    throw new AssertionError("no fault is due", unexpected);
                });
        world = new World(scenario, new Nowhere());
        page.start();
        var unused = voice.scheduleAtFixedRate(this::say, 0, 200, TimeUnit.MILLISECONDS);
    }

    /** The machine stands still meanwhile, so nobody else feeds the monitor. */
    private synchronized boolean acknowledge(byte[] sentence) {
        monitor.accept(new TraceEvent.Bytes(world.timeUs(), Rig.CAB_PORT, sentence));
        return true;
    }

    private void say() {
        if (newest.length > 0) {
            page.board().publish(topics.live(), Payload.of(newest), false, Delivery.LATEST);
        }
    }

    String address() {
        return "http://127.0.0.1:" + page.port() + "/";
    }

    /** Drives on until something is so. */
    void driveUntil(Predicate<Live> reached) {
        do {
            long toUs = world.timeUs() + STEP_US;
            while (world.timeUs() < toUs) {
                if (!world.step(emission ->
                        monitor.accept(new TraceEvent.Bytes(emission.timeUs(), emission.port(), emission.bytes())))) {
                    throw new AssertionError("the scenario ended before that");
                }
            }
            monitor.advanceTo(world.timeUs());
        } while (!reached.test(live));
    }

    /** Where the machine is held, s since its start. */
    double timeS() {
        return world.timeUs() / 1e6;
    }

    /** The first moment of a scenario, s, at which an alert stands; the same on the console, to the bit. */
    static double firstAlertS(Scenario scenario) throws Exception {
        try (CabOnDesk cab = new CabOnDesk(scenario)) {
            cab.driveUntil(live -> !live.standing().isEmpty());
            return cab.timeS();
        }
    }

    /** Lets time pass in which no sensor says anything. */
    void deafFor(double seconds) {
        monitor.advanceTo(world.timeUs() + Math.round(seconds * 1e6));
    }

    /** From now on nothing new comes. */
    void fallSilent() {
        voice.shutdownNow();
    }

    @Override
    public void close() {
        voice.shutdownNow();
        page.close();
    }

    private final class Newest implements Outputs {
        @Override
        public void live(Live now) {
            live = now;
        }

        @Override
        public void raised(Alert alert) {}

        @Override
        public void cleared(Alert alert, long clearedUs) {}
    }

    private static final class Nowhere implements TruthSink {
        @Override
        public void sample(TruthSample sample) {}

        @Override
        public void end(RowLedger ledger) {}
    }
}
