package evenfall.bench.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.report.Json;
import evenfall.bench.run.KeptRun;
import evenfall.bench.run.RunRecord;
import evenfall.bench.run.Runner;
import evenfall.bench.sheet.ComparisonSheet;
import evenfall.bench.sheet.PairSheet;
import evenfall.bench.sheet.ProofSheet;
import evenfall.bench.sheet.RunSheet;
import evenfall.bench.sheet.Sheet;
import evenfall.config.ConfigException;
import evenfall.outlet.OutletCatalogue;
import evenfall.sim.scenario.Scenario;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "report",
        description = "A page for reading and printing: a run, two runs beside each other, outlet types, or a proof.")
final class ReportCommand implements Callable<Integer> {
    private static final String DEFAULT_PAGE = "report.html";

    private final Terminal terminal;

    @Mixin
    private CommonOptions common = new CommonOptions();

    @Mixin
    private ScenarioOptions choice = new ScenarioOptions();

    @Mixin
    private SheetOptions sheets = new SheetOptions();

    @Parameters(
            arity = "0..1",
            paramLabel = "DIR|SCENARIO|PROOF.json",
            defaultValue = "terrace-crossing",
            description = "A folder kept by run --keep, a scenario to be driven now, or a proof's result file.")
    private String source = "terrace-crossing";

    @Option(
            names = "--before",
            paramLabel = "DIR|SCENARIO",
            description = "Another run of the same ground, to stand to the left.")
    private @Nullable String before;

    @Option(names = "--before-outlet", paramLabel = "ID|FILE", description = "Drive the run before with these outlets.")
    private @Nullable String beforeOutlet;

    @Option(names = "--compare", description = "Drive the scenario with every built-in outlet type.")
    private boolean compare;

    ReportCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException, ConfigException, InterruptedException {
        if (!sheets.any()) {
            sheets.html = Path.of(DEFAULT_PAGE);
        }
        sheets.check();
        List<Path> written = sheets.write(sheet());
        if (common.json) {
            ObjectNode root = Json.object();
            ArrayNode files = root.putArray("written");
            written.forEach(file -> files.add(file.toString()));
            terminal.out().println(Json.text(root));
        } else {
            written.forEach(file -> terminal.out().println("wrote " + file));
        }
        return Evenfall.DONE;
    }

    private Sheet sheet() throws IOException, ConfigException, InterruptedException {
        boolean pair = before != null || beforeOutlet != null;
        if (compare && pair) {
            throw ConfigException.ofOption("--compare", "stands beside a run before", "one of the two");
        }
        if (source.endsWith(".json")) {
            if (compare || pair) {
                throw ConfigException.ofOption(
                        "--before", "stands beside a proof", "a folder kept by run, or a scenario");
            }
            return ProofSheet.read(Path.of(source));
        }
        if (compare) {
            return comparison();
        }
        RunRecord run = run(source, choice.outlet);
        if (!pair) {
            return new RunSheet(run, common.units);
        }
        return new PairSheet(run(before == null ? source : before, beforeOutlet), run, common.units);
    }

    private Sheet comparison() throws IOException, ConfigException, InterruptedException {
        if (Files.isDirectory(Path.of(source))) {
            throw ConfigException.ofOption(
                    "--compare", source + " is a folder", "a scenario, to be driven with each outlet type");
        }
        if (choice.outlet != null) {
            throw ConfigException.ofOption("--compare", "stands beside --outlet", "one of the two");
        }
        List<Scenario> scenarios = new ArrayList<>();
        Scenario plain = choice.find(source, common.units);
        for (String id : OutletCatalogue.ids()) {
            scenarios.add(plain.withOutlet(id));
        }
        List<RunRecord> runs = new ArrayList<>();
        for (Scenario scenario : scenarios) {
            runs.add(driven(scenario));
        }
        return new ComparisonSheet(runs, common.units);
    }

    private RunRecord run(String from, @Nullable String outlet)
            throws IOException, ConfigException, InterruptedException {
        if (Files.isDirectory(Path.of(from))) {
            if (outlet != null || choice.seed != null) {
                throw ConfigException.ofOption(
                        outlet != null ? "--outlet" : "--seed",
                        "stands beside a run that was kept",
                        "a scenario to be driven");
            }
            return KeptRun.read(Path.of(from));
        }
        Scenario plain = choice.plain(from, common.units);
        return driven(outlet == null ? plain : plain.withOutlet(outlet));
    }

    private static RunRecord driven(Scenario scenario) throws IOException, ConfigException, InterruptedException {
        return RunRecord.of(Runner.run(scenario, Runner.Options.QUICK, new SilentWatch()), scenario);
    }
}
