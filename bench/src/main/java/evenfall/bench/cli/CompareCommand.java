package evenfall.bench.cli;

import evenfall.bench.compare.CompareJson;
import evenfall.bench.compare.CompareText;
import evenfall.bench.compare.Comparison;
import evenfall.bench.compare.GroundPicture;
import evenfall.bench.report.Json;
import evenfall.bench.run.RunRecord;
import evenfall.bench.run.RunResult;
import evenfall.bench.run.Runner;
import evenfall.bench.sheet.ComparisonSheet;
import evenfall.config.ConfigException;
import evenfall.config.FileCheck;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
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

@Command(name = "compare", description = "The same pass over the same ground with several outlet types, side by side.")
final class CompareCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private CommonOptions common = new CommonOptions();

    @Parameters(
            arity = "0..1",
            paramLabel = "SCENARIO",
            defaultValue = "terrace-crossing",
            description = "A built-in scenario (see feed --list) or a scenario file.")
    private String scenarioName = "terrace-crossing";

    @Mixin
    private OutletTypesOption types = new OutletTypesOption();

    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "Seed of the random streams; the scenario's own if absent.")
    private @Nullable Long seed;

    @Option(
            names = "--picture",
            paramLabel = "FILE.svg",
            description = "Also draw rows by distance, one strip a type, into this file.")
    private @Nullable Path picture;

    @Mixin
    private SheetOptions sheets = new SheetOptions();

    CompareCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException, ConfigException, InterruptedException {
        List<String> outlets = types.idsOrFiles();
        Scenario plain = Scenarios.find(scenarioName);
        Scenario seeded = seed == null ? plain : plain.withSeed(seed);
        // All are looked up before the first is driven: a typo in the last shall not cost the others' time.
        List<Scenario> scenarios = new ArrayList<>();
        for (String outlet : outlets) {
            scenarios.add(seeded.withOutlet(outlet));
        }
        if (picture != null) {
            FileCheck.isWritable(picture, "--picture");
        }
        sheets.check();
        List<RunRecord> records = new ArrayList<>();
        List<RunResult> results = new ArrayList<>();
        for (Scenario scenario : scenarios) {
            RunResult result = Runner.run(scenario, Runner.Options.QUICK, new SilentWatch());
            results.add(result);
            records.add(RunRecord.of(result, scenario));
        }
        Comparison comparison = new Comparison(results);
        if (picture != null) {
            Files.writeString(picture, GroundPicture.svg(comparison));
        }
        if (sheets.any()) {
            sheets.write(new ComparisonSheet(records, common.units));
        }
        if (common.json) {
            terminal.out().println(Json.text(CompareJson.of(comparison)));
        } else {
            terminal.print(new CompareText(terminal.paint(), terminal.columns()).lines(comparison));
        }
        return Evenfall.DONE;
    }
}
