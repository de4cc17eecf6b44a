package evenfall.bench.cli;

import evenfall.bench.choose.Choice;
import evenfall.bench.choose.ChooseJson;
import evenfall.bench.choose.ChoosePage;
import evenfall.bench.choose.ChooseText;
import evenfall.bench.choose.Job;
import evenfall.bench.choose.Prices;
import evenfall.bench.choose.Span;
import evenfall.bench.choose.Wander;
import evenfall.bench.choose.Weights;
import evenfall.bench.report.Json;
import evenfall.config.ConfigException;
import evenfall.liquid.Liquid;
import evenfall.liquid.Liquids;
import evenfall.outlet.OutletCatalogue;
import evenfall.outlet.OutletDesign;
import evenfall.quantity.TradeUnits;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
        name = "choose",
        sortOptions = false,
        sortSynopsis = false,
        description =
                "Which outlets to fit: what each type reaches, what height does to its rows, what it costs; ranked.",
        footer = {
            "",
            "Without options: 36 m, 150-250 L/ha at 8-14 km/h, UAN 28 %%, outlets every 0.508 m (20 in), rows every 0.1905 m (7.5 in),"
                    + " boom at 0.5 m wandering by 0.1 m."
        })
final class ChooseCommand implements Callable<Integer> {
    private static final double PERCENT = 0.01;
    private static final int MOST_OUTLETS = 1000;

    private final Terminal terminal;

    @Mixin
    private CommonOptions common = new CommonOptions();

    @Option(names = "--rate-Lpha", paramLabel = "LOW-HIGH", description = "Rates, L/ha, as 150-250.")
    private @Nullable String rateLpha;

    @Option(names = "--rate-galpac", paramLabel = "LOW-HIGH", description = "Rates, US gal/ac, as 10-60.")
    private @Nullable String rateGalpac;

    @Option(names = "--speed-kmh", paramLabel = "LOW-HIGH", description = "Speeds, km/h, as 8-14.")
    private @Nullable String speedKmh;

    @Option(names = "--speed-mph", paramLabel = "LOW-HIGH", description = "Speeds, mph, as 5-9.")
    private @Nullable String speedMph;

    @Option(
            names = "--pressure-kPa",
            paramLabel = "LOW-HIGH",
            description = "Pressures that the machine holds at the outlets, kPa; each outlet's own window if absent.")
    private @Nullable String pressureKPa;

    @Option(names = "--pressure-psi", paramLabel = "LOW-HIGH", description = "The same, psi.")
    private @Nullable String pressurePsi;

    @Option(names = "--width-m", paramLabel = "W", description = "Width of the boom, m.")
    private @Nullable String widthM;

    @Option(names = "--width-ft", paramLabel = "W", description = "The same, ft.")
    private @Nullable String widthFt;

    @Option(names = "--spacing-m", paramLabel = "S", description = "Distance between outlets, m.")
    private @Nullable String spacingM;

    @Option(names = "--spacing-in", paramLabel = "S", description = "The same, in.")
    private @Nullable String spacingIn;

    @Option(names = "--row-m", paramLabel = "W", description = "Row spacing, m.")
    private @Nullable String rowM;

    @Option(names = "--row-in", paramLabel = "W", description = "The same, in.")
    private @Nullable String rowIn;

    @Option(names = "--height-m", paramLabel = "H", description = "Height of the outlets over the ground, m.")
    private @Nullable String heightM;

    @Option(names = "--height-in", paramLabel = "H", description = "The same, in.")
    private @Nullable String heightIn;

    @Option(
            names = "--height-wander-m",
            paramLabel = "SD",
            description = "How far the height wanders: a standard deviation, m.")
    private @Nullable String wanderM;

    @Option(names = "--height-wander-in", paramLabel = "SD", description = "The same, in.")
    private @Nullable String wanderIn;

    @Option(
            names = "--height-within-m",
            paramLabel = "D",
            description =
                    "How far the height wanders to either side, m, every height in between alike; instead of a wander.")
    private @Nullable String withinM;

    @Option(names = "--height-within-in", paramLabel = "D", description = "The same, in.")
    private @Nullable String withinIn;

    @Option(names = "--product", paramLabel = "ID", description = "water, uan-28, uan-30, uan-32 or thiosulphate.")
    private String product = Liquids.UAN_28.id();

    @Option(
            names = "--thiosulphate-share",
            paramLabel = "F",
            description = "Share of thiosulphate in the tank's volume, 0 to 1.")
    private double thiosulphateShare;

    @Option(names = "--density-kgpL", paramLabel = "D", description = "Density as measured, kg/L.")
    private @Nullable Double densityKgpL;

    @Option(names = "--limit-cv-pct", paramLabel = "CV", description = "Row CV that still counts as even, %%.")
    private double limitCvPct = 15;

    @Option(names = "--air-C", paramLabel = "T", description = "Temperature of the air, °C, for the weather factor.")
    private @Nullable Double airC;

    @Option(names = "--air-F", paramLabel = "T", description = "The same, °F.")
    private @Nullable Double airF;

    @Mixin
    private OutletTypesOption types = new OutletTypesOption();

    @Option(
            names = "--prices",
            paramLabel = "FILE",
            description = "Prices, as bench/docs/example-prices.yaml; costs are unknown without.")
    private @Nullable Path prices;

    @Option(
            names = "--weigh",
            paramLabel = "C=W,...",
            description =
                    "How criteria count, as cost=2,tolerance=1: cost, tolerance, sets, contact, handling; 1 if absent.")
    private @Nullable String weigh;

    @Option(names = "--html", paramLabel = "FILE", description = "Also write a page for reading and printing.")
    private @Nullable Path html;

    ChooseCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ConfigException {
        Job job = job();
        List<OutletDesign> designs = designs();
        Choice choice = Choice.of(
                job,
                designs,
                prices == null ? Prices.none() : Prices.read(prices),
                weigh == null ? Weights.equal() : Weights.parse(weigh));
        if (html != null) {
            write(html, new ChoosePage(choice, common.units).html());
        }
        if (common.json) {
            terminal.out().println(Json.text(ChooseJson.of(choice)));
        } else {
            terminal.print(new ChooseText(common.units, terminal.paint(), terminal.columns()).lines(choice));
        }
        return Evenfall.DONE;
    }

    private static void write(Path file, String page) throws ConfigException {
        try {
            Files.writeString(file, page);
        } catch (IOException e) {
            throw ConfigException.ofOption("--html", file + " cannot be written", "a file in a folder that is there");
        }
    }

    private List<OutletDesign> designs() throws ConfigException {
        List<OutletDesign> designs = new ArrayList<>();
        for (String outlet : types.idsOrFiles()) {
            OutletDesign design = OutletCatalogue.find(outlet, Path.of(""));
            if (designs.stream().anyMatch(d -> d.id().equals(design.id()))) {
                throw ConfigException.ofOption(
                        OutletTypesOption.NAME, design.id() + " is given twice", "each type once");
            }
            designs.add(design);
        }
        return designs;
    }

    private Job job() throws ConfigException {
        double spacing = number(0.508, "--spacing", spacingM, spacingIn, 0.1, 3);
        double width = orElse(
                either("--width-m", widthM, "m", 1, 1, 100, "--width-ft", widthFt, "ft", TradeUnits.FOOT_M, 3, 330)
                        .number(),
                36);
        long count = Math.round(width / spacing);
        if (count < 1 || count > MOST_OUTLETS) {
            throw ConfigException.ofOption(
                    "--width-m",
                    count + " outlets fit on the boom",
                    "a width and a spacing that give 1 to " + MOST_OUTLETS);
        }
        double height = number(0.5, "--height", heightM, heightIn, 0.02, 2);
        Ranges.above("--limit-cv-pct", limitCvPct, 0, 100, "%");
        Span rates = either(
                        "--rate-Lpha",
                        rateLpha,
                        "L/ha",
                        TradeUnits.LPHA_M,
                        1,
                        5000,
                        "--rate-galpac",
                        rateGalpac,
                        "US gal/ac",
                        TradeUnits.GPA_M,
                        0.1,
                        500)
                .span();
        Span speeds = either(
                        "--speed-kmh",
                        speedKmh,
                        "km/h",
                        TradeUnits.KMPH_MPS,
                        1,
                        60,
                        "--speed-mph",
                        speedMph,
                        "mph",
                        TradeUnits.MPH_MPS,
                        0.6,
                        38)
                .span();
        return new Job(
                (int) count,
                spacing,
                number(0.1905, "--row", rowM, rowIn, 0.01, 3),
                rates == null ? new Span(150 * TradeUnits.LPHA_M, 250 * TradeUnits.LPHA_M) : rates,
                speeds == null ? new Span(8 * TradeUnits.KMPH_MPS, 14 * TradeUnits.KMPH_MPS) : speeds,
                liquid(),
                product.equals(Liquids.THIOSULPHATE.id()) ? 1 : thiosulphateShare,
                either(
                                "--pressure-kPa",
                                pressureKPa,
                                "kPa",
                                TradeUnits.KPA_PA,
                                1,
                                2000,
                                "--pressure-psi",
                                pressurePsi,
                                "psi",
                                TradeUnits.PSI_PA,
                                0.1,
                                290)
                        .span(),
                height,
                wander(),
                limitCvPct * PERCENT,
                air());
    }

    private Liquid liquid() throws ConfigException {
        Liquid liquid = Liquids.byId(product)
                .orElseThrow(() -> ConfigException.ofOption(
                        "--product",
                        "there is no product " + product,
                        Liquids.all().stream().map(Liquid::id).collect(Collectors.joining(", "))));
        Ranges.within("--thiosulphate-share", thiosulphateShare, 0, 1, "");
        if (thiosulphateShare > 0) {
            liquid = liquid.blendedWith(Liquids.THIOSULPHATE, thiosulphateShare);
        }
        if (densityKgpL != null) {
            Ranges.within("--density-kgpL", densityKgpL, 0.7, 1.8, "kg/L");
            liquid = liquid.withDensity(densityKgpL * 1000);
        }
        return liquid;
    }

    private Wander wander() throws ConfigException {
        Double deviation = lengths("--height-wander", wanderM, wanderIn, 0, 1).number();
        Double within = lengths("--height-within", withinM, withinIn, 0, 2).number();
        if (deviation != null && within != null) {
            throw ConfigException.ofOption("--height-within", "stands beside --height-wander", "one of the two");
        }
        return within != null
                ? new Wander(Wander.Kind.WITHIN, within)
                : new Wander(Wander.Kind.STANDARD_DEVIATION, orElse(deviation, 0.1));
    }

    private @Nullable Double air() throws ConfigException {
        if (airC != null && airF != null) {
            throw ConfigException.ofOption("--air-C", "stands beside --air-F", "one of the two");
        }
        if (airF != null) {
            Ranges.within("--air-F", airF, -40, 130, "°F");
            return (airF - 32) / 1.8;
        }
        if (airC != null) {
            Ranges.within("--air-C", airC, -40, 55, "°C");
        }
        return airC;
    }

    private static double number(
            double otherwise, String name, @Nullable String metres, @Nullable String inches, double lowM, double highM)
            throws ConfigException {
        return orElse(lengths(name, metres, inches, lowM, highM).number(), otherwise);
    }

    private static EitherUnit lengths(
            String name, @Nullable String metres, @Nullable String inches, double lowM, double highM) {
        return either(
                name + "-m",
                metres,
                "m",
                1,
                lowM,
                highM,
                name + "-in",
                inches,
                "in",
                TradeUnits.INCH_M,
                Math.ceil(lowM / TradeUnits.INCH_M * 10) / 10,
                Math.floor(highM / TradeUnits.INCH_M));
    }

    private static EitherUnit either(
            String metricOption,
            @Nullable String metric,
            String metricUnit,
            double metricSi,
            double metricLow,
            double metricHigh,
            String usOption,
            @Nullable String us,
            String usUnit,
            double usSi,
            double usLow,
            double usHigh) {
        return new EitherUnit(
                new EitherUnit.Given(metricOption, metric, metricUnit, metricSi, metricLow, metricHigh),
                new EitherUnit.Given(usOption, us, usUnit, usSi, usLow, usHigh));
    }

    private static double orElse(@Nullable Double value, double otherwise) {
        return value == null ? otherwise : value;
    }
}
