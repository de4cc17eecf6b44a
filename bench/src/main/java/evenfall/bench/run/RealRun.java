package evenfall.bench.run;

import evenfall.bench.broker.BrokerListener;
import evenfall.bench.broker.EmbeddedBroker;
import evenfall.bench.received.Message;
import evenfall.bench.received.Report;
import evenfall.bench.report.Counted;
import evenfall.bench.score.Score;
import evenfall.bench.score.Scoring;
import evenfall.config.ConfigException;
import evenfall.rig.Rig;
import evenfall.sim.feed.FeedByPort;
import evenfall.sim.feed.RealTimePace;
import evenfall.sim.feed.VirtualPort;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.world.Emission;
import evenfall.sim.world.World;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The monitor's own process on virtual serial ports, heard at a broker. */
final class RealRun {
    private static final double PATIENCE_S = 15;

    /** After the last byte, for the last messages to arrive; short enough that no port falls silent. */
    private static final long LAST_WORDS_MS = 400;

    /** Twice the period of the fastest sentence: less changes nothing that is scored. */
    private static final long LATE_US = 100_000;

    private final Scenario scenario;
    private final Runner.Options options;
    private final Runner.Watcher watcher;
    private final List<RunResult.Time> times = new ArrayList<>();
    private final List<String> remarks = new ArrayList<>();
    private final long createdNs = System.nanoTime();
    private long phaseNs = createdNs;

    RealRun(Scenario scenario, Runner.Options options, Runner.Watcher watcher) {
        this.scenario = scenario;
        this.options = options;
        this.watcher = watcher;
    }

    RunResult run() throws IOException, ConfigException, InterruptedException {
        Scoring scoring = new Scoring(scenario);
        try (Workshop workshop = new Workshop();
                Keeping kept = Keeping.in(options.keep())) {
            Runner.Address address = broker(workshop);
            Map<String, VirtualPort> ports = ports(workshop);
            String rigText = scenario.rigYaml(devices(ports), address.host(), address.port(), Optional.empty());
            Path rigFile = Files.writeString(workshop.folder().resolve("rig.yaml"), rigText);
            kept.text("rig.yaml", rigText);
            BrokerListener listener = workshop.keep(listen(address));
            watcher.preparing("starting the monitor");
            Optional<Path> trace =
                    options.keep().map(folder -> folder.resolve("trace.txt").toAbsolutePath());
            if (trace.isPresent()) {
                Files.deleteIfExists(trace.get());
            }
            Path log = options.keep().orElse(workshop.folder()).resolve("monitor.txt");
            ControllerProcess monitor = workshop.keep(ControllerProcess.start(rigFile, log, trace));
            monitor.awaitOpen(ports.values().stream().map(VirtualPort::path).toList(), PATIENCE_S);
            phase("monitor up");
            long beganUs = drive(scoring, ports);
            if (!monitor.isAlive()) {
                throw new IOException("the monitor ended in the middle of the drive: " + monitor.lastWords());
            }
            Thread.sleep(LAST_WORDS_MS);
            List<Message> messages = shifted(listener.messages(), beganUs);
            complain(listener);
            monitor.stop();
            kept.messages(messages);
            phase("drive");
            return result(scoring, messages);
        }
    }

    private RunResult result(Scoring scoring, List<Message> messages) throws IOException {
        Report report = Report.of(messages).until(scenario.seconds());
        if (report.moments().isEmpty()) {
            throw new IOException("the monitor said nothing that arrived at the broker");
        }
        Score score = scoring.score(report);
        phase("score");
        return new RunResult(
                scenario.name(),
                scenario.title(),
                scenario.seed(),
                scenario.seconds(),
                scenario.belief().outlet().id(),
                Pace.REAL,
                score,
                scoring.course(),
                report,
                null,
                times,
                remarks);
    }

    private Runner.Address broker(Workshop workshop) throws IOException {
        if (options.broker().isPresent()) {
            return options.broker().get();
        }
        watcher.preparing("starting a broker");
        EmbeddedBroker broker = workshop.keep(EmbeddedBroker.start());
        phase("broker up");
        return new Runner.Address(broker.host(), broker.port());
    }

    private BrokerListener listen(Runner.Address address) throws IOException, ConfigException {
        try {
            return BrokerListener.open(
                    address.host(),
                    address.port(),
                    "evenfall/" + scenario.belief().name() + "/#",
                    this::nowUs,
                    watcher::heard);
        } catch (IOException e) {
            if (options.broker().isEmpty()) {
                throw e;
            }
            throw ConfigException.ofOption(
                    "--broker",
                    String.valueOf(e.getMessage()),
                    "HOST:PORT of a broker that runs; without this option one is started here");
        }
    }

    private Map<String, VirtualPort> ports(Workshop workshop) throws IOException {
        Map<String, VirtualPort> ports = new LinkedHashMap<>();
        for (Rig.Port port : scenario.belief().ports()) {
            ports.put(
                    port.name(),
                    workshop.keep(VirtualPort.open(workshop.folder().resolve(port.name()))));
        }
        return ports;
    }

    private static Map<String, String> devices(Map<String, VirtualPort> ports) {
        Map<String, String> devices = new LinkedHashMap<>();
        ports.forEach((name, port) -> devices.put(name, port.path().toString()));
        return devices;
    }

    /**
     * Drives the scenario in real time.
     *
     * @return when it began, µs on this run's clock
     */
    private long drive(Scoring scoring, Map<String, VirtualPort> ports) throws InterruptedException {
        FeedByPort feed = new FeedByPort(ports);
        RealTimePace pace = new RealTimePace(1);
        World world = new World(scenario, scoring.truth());
        ArrayDeque<Emission> waiting = new ArrayDeque<>();
        pace.await(0);
        long beganUs = nowUs();
        boolean more = true;
        while (more) {
            more = world.step(waiting::add);
            while (!waiting.isEmpty()) {
                Emission emission = waiting.remove();
                hold(pace, emission.timeUs());
                feed.accept(emission);
                watcher.driving(emission.timeUs() / 1e6);
            }
        }
        hold(pace, world.endUs());
        if (feed.droppedBytes() > 0) {
            remarks.add(feed.droppedBytes() + " bytes found no room on the serial ports: this machine was too busy");
        }
        if (pace.worstLateUs() > LATE_US) {
            remarks.add("the simulator was up to " + pace.worstLateUs() / 1000 + " ms late: this machine was too busy");
        }
        return beganUs;
    }

    private static void hold(RealTimePace pace, long timeUs) throws InterruptedException {
        if (!pace.await(timeUs)) {
            throw new InterruptedException("the drive was broken off");
        }
    }

    private void complain(BrokerListener listener) {
        String lost = listener.lost();
        if (lost != null) {
            remarks.add("the connection to the broker was lost: " + lost);
        }
        if (listener.dropped() > 0) {
            remarks.add(Counted.text(listener.dropped(), "message") + " more than can be kept");
        }
    }

    private static List<Message> shifted(List<Message> messages, long beganUs) {
        return messages.stream()
                .map(m -> new Message(m.arrivalUs() - beganUs, m.topic(), m.payload()))
                .toList();
    }

    private long nowUs() {
        return (System.nanoTime() - createdNs) / 1000;
    }

    private void phase(String what) {
        long nowNs = System.nanoTime();
        times.add(new RunResult.Time(what, (nowNs - phaseNs) / 1e9));
        phaseNs = nowNs;
    }
}
