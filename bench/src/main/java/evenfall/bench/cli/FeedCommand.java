package evenfall.bench.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.feed.Feeding;
import evenfall.bench.report.Counted;
import evenfall.bench.report.Json;
import evenfall.config.ConfigException;
import evenfall.config.FileCheck;
import evenfall.quantity.FixedDecimals;
import evenfall.rig.Rig;
import evenfall.sim.fault.Fault;
import evenfall.sim.fault.Faults;
import evenfall.sim.fault.Part;
import evenfall.sim.feed.Feed;
import evenfall.sim.feed.FeedByPort;
import evenfall.sim.feed.SerialFeed;
import evenfall.sim.feed.VirtualPort;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "feed",
        description = "The simulator alone: into a trace as fast as it goes, or onto serial ports in real time.")
final class FeedCommand implements Callable<Integer> {
    private static final double TELL_EVERY_S = 5;

    private final Terminal terminal;

    @Mixin
    private CommonOptions common = new CommonOptions();

    @Mixin
    private ScenarioOptions choice = new ScenarioOptions();

    @Parameters(
            arity = "0..1",
            paramLabel = "SCENARIO",
            description = "A built-in scenario (see --list) or a scenario file.")
    private @Nullable String scenarioName;

    @Option(names = "--list", description = "List the built-in scenarios.")
    private boolean list;

    @Option(
            names = "--faults",
            description = "List the faults that a scenario can ask for, and what a crew would notice.")
    private boolean faults;

    @Option(names = "--trace", paramLabel = "FILE", description = "Write a trace; packed when the name ends in .gz.")
    private @Nullable Path trace;

    @Option(
            names = "--virtual",
            description = "Make a virtual serial port for each port of the rig and print its path.")
    private boolean virtual;

    @Option(names = "--port", paramLabel = "NAME=DEVICE", description = "Send what belongs to a port to a real device.")
    private Map<String, String> devices = new LinkedHashMap<>();

    @Option(
            names = "--rig",
            paramLabel = "FILE",
            description = "Also write the rig file that a monitor needs for these ports.")
    private @Nullable Path rigFile;

    @Option(
            names = "--speed",
            paramLabel = "X",
            defaultValue = "1",
            description = "So many times faster than in the field, onto ports; a trace never waits.")
    private double speed = 1;

    FeedCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException, ConfigException, InterruptedException {
        if (list) {
            list();
            return Evenfall.DONE;
        }
        if (faults) {
            listFaults();
            return Evenfall.DONE;
        }
        if (scenarioName == null) {
            throw new ConfigException(
                    "SCENARIO", 0, null, "is missing", String.join(", ", Scenarios.names()) + ", or a scenario file");
        }
        Scenario scenario = choice.find(scenarioName, common.units);
        Ranges.within("--speed", speed, 0.1, 100, "times");
        int ways = (trace == null ? 0 : 1) + (virtual ? 1 : 0) + (devices.isEmpty() ? 0 : 1);
        if (ways != 1) {
            throw ConfigException.ofOption(
                    "--trace, --virtual, --port", ways + " of them are given", "one way for the bytes to go");
        }
        if (trace != null) {
            FileCheck.isWritable(trace, "--trace");
        }
        if (rigFile != null) {
            FileCheck.isWritable(rigFile, "--rig");
        }
        Feeding.Fed fed = trace == null ? ontoPorts(scenario) : intoTrace(scenario, trace);
        tell(scenario, fed);
        return Evenfall.DONE;
    }

    private void list() throws ConfigException {
        ObjectNode root = Json.object();
        ArrayNode array = root.putArray("scenarios");
        for (String name : Scenarios.names()) {
            Scenario scenario = Scenarios.find(name);
            ObjectNode node = array.addObject();
            node.put("scenario", name);
            node.set("seconds", Json.number(scenario.seconds(), 3));
            node.put("title", scenario.title());
            if (!common.json) {
                terminal.out()
                        .println(terminal.paint().strong(name) + " ".repeat(Math.max(2, 20 - name.length()))
                                + FixedDecimals.text(scenario.seconds(), 0) + " s  " + scenario.title());
            }
        }
        if (common.json) {
            terminal.out().println(Json.text(root));
        }
    }

    private void listFaults() {
        ObjectNode root = Json.object();
        ArrayNode array = root.putArray("faults");
        Part part = null;
        for (Fault fault : Faults.all()) {
            ObjectNode node = array.addObject();
            node.put("fault", fault.id());
            node.put("part", fault.part().words());
            node.put("where", fault.place().words());
            node.put("how_much", fault.amount().words());
            node.put("noticed", fault.notice());
            node.put("seen_by", fault.seenBy());
            ArrayNode alerts = node.putArray("alerts");
            fault.alerts().forEach(alerts::add);
            if (common.json) {
                continue;
            }
            if (fault.part() != part) {
                terminal.out()
                        .println(
                                part == null
                                        ? fault.part().words()
                                        : "\n" + fault.part().words());
                part = fault.part();
            }
            terminal.out()
                    .println("  " + terminal.paint().strong(fault.id())
                            + " ".repeat(Math.max(2, 26 - fault.id().length())) + fault.notice());
            terminal.out()
                    .println("  " + " ".repeat(26)
                            + terminal.paint()
                                    .faint("where: " + fault.place().words() + "; how_much: "
                                            + fault.amount().words()));
        }
        if (common.json) {
            terminal.out().println(Json.text(root));
        }
    }

    private Feeding.Fed intoTrace(Scenario scenario, Path file) throws IOException {
        writeRig(scenario, Map.of());
        try {
            return Feeding.intoTrace(scenario, file);
        } catch (IOException e) {
            throw new IOException(file + " cannot be written (" + FileCheck.reason(e) + ")", e);
        }
    }

    private Feeding.Fed ontoPorts(Scenario scenario) throws IOException, ConfigException, InterruptedException {
        checkPortNames(scenario);
        Map<String, Feed> feeds = new LinkedHashMap<>();
        Map<String, String> paths = new LinkedHashMap<>();
        try (FeedByPort feed = open(scenario, feeds, paths)) {
            writeRig(scenario, paths);
            paths.forEach((port, path) -> terminal.err().println("evenfall: port " + port + " is " + path));
            double[] nextS = {TELL_EVERY_S};
            return Feeding.byTheClock(scenario, feed, speed, atS -> {
                if (atS >= nextS[0]) {
                    nextS[0] += TELL_EVERY_S;
                    terminal.err()
                            .println("evenfall: " + FixedDecimals.text(atS, 0) + " of "
                                    + FixedDecimals.text(scenario.seconds(), 0) + " s");
                }
            });
        }
    }

    private FeedByPort open(Scenario scenario, Map<String, Feed> feeds, Map<String, String> paths)
            throws IOException, ConfigException {
        for (Rig.Port port : scenario.belief().ports()) {
            String device = devices.get(port.name());
            if (virtual) {
                VirtualPort made = VirtualPort.open();
                feeds.put(port.name(), made);
                paths.put(port.name(), made.path().toString());
            } else if (device != null) {
                feeds.put(port.name(), serial(device, port.baud()));
                paths.put(port.name(), device);
            }
        }
        return new FeedByPort(feeds);
    }

    private static SerialFeed serial(String device, int baud) throws ConfigException {
        try {
            return SerialFeed.open(device, baud);
        } catch (IOException e) {
            throw ConfigException.ofOption(
                    "--port",
                    String.valueOf(e.getMessage()),
                    "NAME=DEVICE with a serial port that is there, free, and open to this user");
        }
    }

    private void checkPortNames(Scenario scenario) throws ConfigException {
        for (String name : devices.keySet()) {
            if (scenario.belief().ports().stream().noneMatch(p -> p.name().equals(name))) {
                throw ConfigException.ofOption(
                        "--port",
                        "the scenario's rig has no port " + name,
                        scenario.belief().ports().stream().map(Rig.Port::name).collect(Collectors.joining(", ")));
            }
        }
    }

    private void writeRig(Scenario scenario, Map<String, String> paths) throws IOException {
        if (rigFile != null) {
            Rig.Broker broker = scenario.belief().broker();
            Files.writeString(rigFile, scenario.rigYaml(paths, broker.host(), broker.port(), Optional.empty()));
        }
    }

    private void tell(Scenario scenario, Feeding.Fed fed) {
        if (common.json) {
            ObjectNode root = Json.object();
            root.put("scenario", scenario.name());
            root.put("seed", scenario.seed());
            root.set("seconds", Json.number(fed.seconds(), 3));
            ObjectNode sentences = root.putObject("sentences");
            fed.sentences().forEach(sentences::put);
            root.put("bytes", fed.bytes());
            root.put("dropped_bytes", fed.droppedBytes());
            root.set("worst_late_ms", Json.number(fed.worstLateMs(), 1));
            terminal.out().println(Json.text(root));
            return;
        }
        String ports = fed.sentences().entrySet().stream()
                .map(e -> Counted.text(e.getValue(), "sentence") + " on " + e.getKey())
                .collect(Collectors.joining(", "));
        terminal.out()
                .println(scenario.name() + ", seed " + scenario.seed() + ": " + FixedDecimals.text(fed.seconds(), 0)
                        + " s, " + ports
                        + (fed.droppedBytes() > 0 ? ", " + fed.droppedBytes() + " bytes dropped" : ""));
    }
}
