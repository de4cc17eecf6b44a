package evenfall.bench.cli;

import evenfall.bench.live.LiveView;
import evenfall.bench.report.Json;
import evenfall.bench.run.KeptRun;
import evenfall.bench.run.Pace;
import evenfall.bench.run.RunJson;
import evenfall.bench.run.RunRecord;
import evenfall.bench.run.RunResult;
import evenfall.bench.run.RunText;
import evenfall.bench.run.Runner;
import evenfall.config.ConfigException;
import evenfall.rig.Rig;
import evenfall.sim.scenario.Scenario;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "run",
        description =
                "The whole chain: simulator, serial ports, the real monitor, a broker, and the score against the truth.")
final class RunCommand implements Callable<Integer> {
    private static final Pattern ADDRESS = Pattern.compile("(?<host>[^:/\\s]+):(?<port>[0-9]{1,5})");
    private static final int HIGHEST_PORT = 65_535;

    private final Terminal terminal;

    @Mixin
    private CommonOptions common = new CommonOptions();

    @Mixin
    private ScenarioOptions choice = new ScenarioOptions();

    @Parameters(
            arity = "0..1",
            paramLabel = "SCENARIO",
            defaultValue = "terrace-crossing",
            description = "A built-in scenario (see feed --list) or a scenario file; the terrace crossing if absent.")
    private String scenarioName = "terrace-crossing";

    @Option(
            names = "--pace",
            paramLabel = "real|max",
            defaultValue = "real",
            description = "real: own process, serial ports, broker, in real time; max: the same bytes by the scenario's"
                    + " clock, as fast as they go.")
    private Pace pace = Pace.REAL;

    @Option(
            names = "--broker",
            paramLabel = "HOST:PORT",
            description = "A broker outside; without it one is started here.")
    private @Nullable String broker;

    @Option(
            names = "--keep",
            paramLabel = "DIR",
            description = "Keep rig file, trace, messages, result and truth in this folder, also for report.")
    private @Nullable Path keep;

    RunCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException, ConfigException, InterruptedException {
        Scenario scenario = choice.find(scenarioName, common.units);
        Runner.Options options = new Runner.Options(pace, address(), Optional.ofNullable(keep));
        RunResult result;
        if (pace == Pace.MAX) {
            result = Runner.run(scenario, options, new SilentWatch());
        } else {
            try (RunWatch watch = new RunWatch(terminal, view(scenario), !common.json)) {
                result = Runner.run(scenario, options, watch);
            }
        }
        String json = Json.text(RunJson.of(result));
        if (keep != null) {
            Files.writeString(keep.resolve("result.json"), json + "\n");
            KeptRun.addTruth(keep, RunRecord.of(result, scenario));
        }
        if (common.json) {
            terminal.out().println(json);
        } else {
            terminal.print(new RunText(terminal.paint()).lines(result));
        }
        return Evenfall.DONE;
    }

    private LiveView view(Scenario scenario) {
        Rig.Limits limits = scenario.belief().limits();
        return new LiveView(
                scenario.name() + ", " + scenario.belief().outlet().id(),
                scenario.seconds(),
                100 * limits.rateError(),
                limits.rowCv(),
                limits.walkingMps(),
                common.units,
                terminal.paint(),
                terminal.columns());
    }

    private Optional<Runner.Address> address() throws ConfigException {
        if (broker == null) {
            return Optional.empty();
        }
        Matcher parts = ADDRESS.matcher(broker);
        if (!parts.matches() || Integer.parseInt(parts.group("port")) > HIGHEST_PORT) {
            throw ConfigException.ofOption("--broker", broker + " is no address", "HOST:PORT, such as 127.0.0.1:1883");
        }
        return Optional.of(new Runner.Address(parts.group("host"), Integer.parseInt(parts.group("port"))));
    }
}
