package evenfall.bench.cli;

import evenfall.bench.pattern.PatternJson;
import evenfall.bench.pattern.PatternStudy;
import evenfall.bench.pattern.PatternText;
import evenfall.bench.report.Json;
import evenfall.config.ConfigException;
import evenfall.outlet.OutletCatalogue;
import evenfall.outlet.OutletType;
import evenfall.pattern.StaticPattern;
import evenfall.quantity.TradeUnits;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
        name = "pattern",
        description = "What lands where for one outlet type at given heights, pressure, product, spacing and rows.",
        showDefaultValues = true)
final class PatternCommand implements Callable<Integer> {
    private static final int MOST_HEIGHTS = 100;

    private final Terminal terminal;

    @Mixin
    private CommonOptions common = new CommonOptions();

    @Option(names = "--outlet", paramLabel = "ID|FILE", description = "A built-in outlet type or an outlet file.")
    private String outlet = "five-stream";

    @Option(
            names = "--height-m",
            paramLabel = "H",
            splitSynopsisLabel = ",",
            split = ",",
            description = "Height of the outlets over the ground, m; below 0 they are in the crop or soil.")
    private List<Double> heightsM = List.of(0.5);

    @Option(names = "--pressure-kPa", paramLabel = "P", description = "Pressure at the outlets, kPa.")
    private double pressureKPa = 200;

    @Option(names = "--sg", paramLabel = "SG", description = "Density of the product over that of water.")
    private double specificGravity = 1.28;

    @Option(names = "--spacing-m", paramLabel = "S", description = "Distance between outlets, m.")
    private double spacingM = 0.508;

    @Option(names = "--row-m", paramLabel = "W", description = "Row spacing, m.")
    private double rowM = 0.1905;

    @Option(names = "--count", paramLabel = "N", description = "Outlets on the boom.")
    private int count = 72;

    @Option(
            names = "--row-phase",
            paramLabel = "F",
            description = "Row j lies at (j + F) row spacings right of the centre line.")
    private double rowPhase = 0.5;

    PatternCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ConfigException {
        check();
        OutletType type = OutletCatalogue.find(outlet, Path.of("")).fitted(spacingM);
        PatternStudy study = PatternStudy.of(
                type,
                new StaticPattern.Layout(count, spacingM, rowM, rowPhase),
                pressureKPa * TradeUnits.KPA_PA,
                specificGravity,
                heightsM);
        if (study.outsideWindow()) {
            terminal.err()
                    .println("evenfall: " + common.units.pressure(study.pressurePa()) + " lies outside the window of "
                            + type.id() + ", " + common.units.pressure(type.lowPa()) + " to "
                            + common.units.pressure(type.highPa())
                            + "; its streams may not form or land as computed here");
        }
        if (common.json) {
            terminal.out().println(Json.text(PatternJson.of(study)));
        } else {
            terminal.print(new PatternText(common.units, terminal.paint(), terminal.columns()).lines(study));
        }
        return 0;
    }

    private void check() throws ConfigException {
        if (heightsM.isEmpty() || heightsM.size() > MOST_HEIGHTS) {
            throw ConfigException.ofOption(
                    "--height-m", heightsM.size() + " heights are given", "1 to " + MOST_HEIGHTS + " heights");
        }
        for (double heightM : heightsM) {
            Ranges.within("--height-m", heightM, -1, 5, "m");
        }
        Ranges.above("--pressure-kPa", pressureKPa, 0, 2000, "kPa");
        Ranges.within("--sg", specificGravity, 0.5, 2, "");
        Ranges.above("--spacing-m", spacingM, 0, 3, "m");
        Ranges.within("--row-m", rowM, 0.01, 3, "m");
        Ranges.within("--count", count, 1, 1000, "outlets");
        Ranges.within("--row-phase", rowPhase, -1000, 1000, "row spacings");
    }
}
