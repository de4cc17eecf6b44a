package evenfall.bench.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.report.Json;
import evenfall.bench.report.TextTable;
import evenfall.bench.study.Case;
import evenfall.bench.study.Findings;
import evenfall.bench.study.Grid;
import evenfall.bench.study.Outcome;
import evenfall.bench.study.StudyCsv;
import evenfall.bench.study.StudySheet;
import evenfall.bench.study.StudyStore;
import evenfall.bench.study.Studying;
import evenfall.config.ConfigException;
import evenfall.config.FileCheck;
import evenfall.outlet.OutletCatalogue;
import evenfall.quantity.FixedDecimals;
import evenfall.quantity.TradeUnits;
import evenfall.quantity.Units;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
        name = "study",
        sortOptions = false,
        description =
                "Which outlet type for which ground, speed and height: many runs on all cores, kept as they end, to be gone"
                        + " on with after a break.")
final class StudyCommand implements Callable<Integer> {
    private static final List<String> GROUNDS = List.of("level", "A", "B", "C", "D", "E");
    private static final int MOST_RUNS = 200_000;
    private static final int BAR = 30;

    /** A line for each twentieth part, where nobody watches. */
    private static final int LINES = 20;

    private final Terminal terminal;

    @Mixin
    private CommonOptions common = new CommonOptions();

    @Option(
            names = "--ground",
            paramLabel = "CLASS",
            split = ",",
            splitSynopsisLabel = ",",
            description = "Classes of roughness by ISO 8608, A to E, or level; B,C,D if absent.")
    private @Nullable List<String> grounds;

    @Mixin
    private OutletTypesOption types = new OutletTypesOption();

    @Option(names = "--speed-kmh", paramLabel = "V,...", description = "Speeds, km/h; 8,12,16 if absent.")
    private @Nullable String speedKmh;

    @Option(names = "--speed-mph", paramLabel = "V,...", description = "The same, mph.")
    private @Nullable String speedMph;

    @Option(names = "--height-m", paramLabel = "H,...", description = "Target heights, m; 0.4,0.5,0.6 if absent.")
    private @Nullable String heightM;

    @Option(names = "--height-in", paramLabel = "H,...", description = "The same, in.")
    private @Nullable String heightIn;

    @Option(
            names = "--seeds",
            paramLabel = "A-B",
            description = "Stretches of ground, each driven by all; 1-5 if absent.")
    private @Nullable String seeds;

    @Option(names = "--seconds", paramLabel = "S", description = "How long each run lasts; 60 if absent.")
    private @Nullable Double seconds;

    @Option(names = "--rate-Lpha", paramLabel = "R", description = "Target rate, L/ha; 160 if absent.")
    private @Nullable String rateLpha;

    @Option(names = "--rate-galpac", paramLabel = "R", description = "The same, US gal/ac.")
    private @Nullable String rateGalpac;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            required = true,
            description = "Folder for study.sqlite, study.csv and study.html.")
    private Path out = Path.of("");

    @Option(
            names = "--resume",
            description = "Go on with the study in that folder; its options need not be said again.")
    private boolean resume;

    @Mixin
    private JobsOption jobs = new JobsOption();

    @Mixin
    private SheetOptions sheets = new SheetOptions();

    private volatile boolean stopping;
    private long beganNs;

    StudyCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException, ConfigException, InterruptedException {
        int many = jobs.runsAtATime();
        Grid grid = resume && nothingAsked() ? StudyStore.gridOf(out) : grid();
        check(grid);
        folder();
        sheets.check();
        try (StudyStore store = StudyStore.open(out, grid, resume)) {
            Thread hook = new Thread(() -> stop(store), "stop the study");
            Runtime.getRuntime().addShutdownHook(hook);
            int made;
            beganNs = System.nanoTime();
            try {
                made = Studying.make(grid, store, many, this::progress);
            } catch (IOException | InterruptedException e) {
                if (stopping) {
                    return Evenfall.FAILED;
                }
                throw e;
            } finally {
                unhook(hook);
            }
            double tookS = (System.nanoTime() - beganNs) / 1e9;
            if (made > 0) {
                terminal.err()
                        .println(made + " runs in " + FixedDecimals.text(tookS, 1) + " s, " + many + " at a time: "
                                + FixedDecimals.text(made / Math.max(1e-3, tookS), 2) + " runs/s");
            }
            return say(grid, store.all());
        }
    }

    private void unhook(Thread hook) {
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException e) {
            // The program is on its way out, and the hook does the rest.
            stopping = true;
        }
    }

    private void stop(StudyStore store) {
        stopping = true;
        try {
            store.close();
            terminal.err().println();
            terminal.err()
                    .println("evenfall: stopped; every run that had ended is kept, --resume goes on with the rest");
        } catch (IOException e) {
            terminal.err().println("evenfall: " + e.getMessage());
        }
    }

    private void folder() throws ConfigException {
        try {
            Files.createDirectories(out);
        } catch (IOException e) {
            throw ConfigException.ofOption(
                    "--out",
                    "the folder " + out + " cannot be made (" + FileCheck.reason(e) + ")",
                    "a folder, or the path of one that can be made");
        }
    }

    private int say(Grid grid, Map<Case, Outcome> outcomes) throws IOException {
        whole(out.resolve("study.csv"), StudyCsv.text(grid, outcomes));
        StudySheet sheet = new StudySheet(grid, outcomes, common.units);
        if (sheets.html == null) {
            whole(out.resolve("study.html"), sheet.html());
        }
        sheets.write(sheet);
        List<Findings.Answer> answers = Findings.of(grid, outcomes);
        if (common.json) {
            terminal.out().println(Json.text(json(outcomes.size(), answers)));
        } else {
            terminal.print(lines(answers));
        }
        return Evenfall.DONE;
    }

    /** A file is there whole or not at all. */
    private static void whole(Path file, String text) throws IOException {
        Path beside = file.resolveSibling(file.getFileName() + ".new");
        Files.writeString(beside, text);
        Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
    }

    private List<String> lines(List<Findings.Answer> answers) {
        TextTable table = new TextTable(terminal.paint(), 1, "ground", "speed", "outlet", "height", "row CV p95 %", "");
        for (Findings.Answer answer : answers) {
            boolean first = true;
            for (Findings.Standing one : answer.standings()) {
                table.row(
                        first ? answer.ground() : "",
                        first ? common.units.speed(answer.speedKmh() * TradeUnits.KMPH_MPS) : "",
                        one.outlet(),
                        common.units.length(one.heightM()),
                        Units.percentNumber(one.cvP95(), 1),
                        first ? "most even" : Boolean.TRUE.equals(one.like()) ? "not told apart" : "");
                first = false;
            }
        }
        List<String> lines = new ArrayList<>(table.lines());
        lines.add("");
        lines.add(
                "  simulated; each type at the height that suits it best. " + out.resolve("study.html") + " shows it");
        return lines;
    }

    private static ObjectNode json(int runs, List<Findings.Answer> answers) {
        ObjectNode root = Json.object();
        root.put("runs", runs);
        ArrayNode list = root.putArray("answers");
        for (Findings.Answer answer : answers) {
            ObjectNode node = list.addObject();
            node.put("ground", answer.ground());
            node.set("speed_kmh", Json.number(answer.speedKmh(), 3));
            ArrayNode types = node.putArray("outlets");
            for (Findings.Standing one : answer.standings()) {
                ObjectNode type = types.addObject();
                type.put("outlet", one.outlet());
                type.set("height_m", Json.number(one.heightM(), 3));
                type.set("row_cv_p95", Json.number(one.cvP95(), 5));
                type.put("not_told_apart_from_best", one.like());
            }
        }
        return root;
    }

    private void progress(int made, int kept, int of) {
        double perS = made / Math.max(1e-3, (System.nanoTime() - beganNs) / 1e9);
        if (terminal.live()) {
            int full = BAR * kept / of;
            terminal.err()
                    .print("\r[" + "#".repeat(full) + ".".repeat(BAR - full) + "] " + kept + " of " + of + ", "
                            + FixedDecimals.text(perS, 1) + " runs/s, " + FixedDecimals.text((of - kept) / perS, 0)
                            + " s left  ");
            if (kept == of) {
                terminal.err().println();
            }
            terminal.err().flush();
        } else if (kept * LINES / of != (kept - 1) * LINES / of) {
            terminal.err().println(kept + " of " + of + " runs");
        }
    }

    private boolean nothingAsked() {
        return grounds == null
                && !types.isGiven()
                && speedKmh == null
                && speedMph == null
                && heightM == null
                && heightIn == null
                && seeds == null
                && seconds == null
                && rateLpha == null
                && rateGalpac == null;
    }

    private Grid grid() throws ConfigException {
        double lengthS = seconds == null ? 60 : seconds;
        Ranges.within("--seconds", lengthS, 5, 3600, "s");
        return new Grid(
                grounds == null ? List.of("B", "C", "D") : grounds,
                types.idsOrFiles(),
                list(
                        "--speed-kmh",
                        speedKmh,
                        1,
                        "--speed-mph",
                        speedMph,
                        TradeUnits.MPH_MPS / TradeUnits.KMPH_MPS,
                        2,
                        40,
                        "km/h",
                        List.of(8.0, 12.0, 16.0)),
                list(
                        "--height-m",
                        heightM,
                        1,
                        "--height-in",
                        heightIn,
                        TradeUnits.INCH_M,
                        0.1,
                        1.5,
                        "m",
                        List.of(0.4, 0.5, 0.6)),
                Seeds.of(seeds == null ? "1-5" : seeds),
                lengthS,
                list(
                                "--rate-Lpha",
                                rateLpha,
                                1,
                                "--rate-galpac",
                                rateGalpac,
                                TradeUnits.GPA_M / TradeUnits.LPHA_M,
                                20,
                                1000,
                                "L/ha",
                                List.of(160.0))
                        .get(0));
    }

    private static void check(Grid grid) throws ConfigException {
        for (String ground : grid.grounds()) {
            if (!GROUNDS.contains(ground)) {
                throw ConfigException.ofOption("--ground", "there is no class " + ground, String.join(", ", GROUNDS));
            }
        }
        once("--ground", grid.grounds());
        for (String outlet : grid.outlets()) {
            OutletCatalogue.find(outlet, Path.of(""));
        }
        once(OutletTypesOption.NAME, grid.outlets());
        once("--speed-kmh", grid.speedsKmh());
        once("--height-m", grid.heightsM());
        long runs = (long) grid.grounds().size()
                * grid.outlets().size()
                * grid.speedsKmh().size()
                * grid.heightsM().size()
                * grid.seeds().size();
        if (runs > MOST_RUNS) {
            throw ConfigException.ofOption("study", "asks for " + runs + " runs", "at most " + MOST_RUNS);
        }
    }

    private static void once(String option, List<?> values) throws ConfigException {
        if (values.isEmpty()) {
            throw ConfigException.ofOption(option, "none is given", "one or several, with commas between");
        }
        if (new HashSet<>(values).size() < values.size()) {
            throw ConfigException.ofOption(option, "the same is given twice", "each once");
        }
    }

    private static List<Double> list(
            String metricOption,
            @Nullable String metric,
            double metricSize,
            String usOption,
            @Nullable String us,
            double usSize,
            double low,
            double high,
            String unit,
            List<Double> otherwise)
            throws ConfigException {
        if (metric != null && us != null) {
            throw ConfigException.ofOption(metricOption, "stands beside " + usOption, "one of the two");
        }
        String text = metric == null ? us : metric;
        if (text == null) {
            return otherwise;
        }
        String option = metric == null ? usOption : metricOption;
        List<Double> values = new ArrayList<>();
        for (String part : text.split(",", -1)) {
            double value;
            try {
                value = Double.parseDouble(part.strip());
            } catch (NumberFormatException e) {
                throw ConfigException.ofOption(option, part + " is no number", "numbers with commas between");
            }
            double size = metric == null ? usSize : metricSize;
            Ranges.within(
                    option,
                    value,
                    Math.ceil(low / size * 100) / 100,
                    Math.floor(high / size * 100) / 100,
                    metric == null ? "" : unit);
            values.add(value * size);
        }
        return values;
    }
}
