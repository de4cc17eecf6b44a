package evenfall.bench.prove.guide;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.prove.measure.Course128;
import evenfall.bench.prove.measure.Finding;
import evenfall.bench.prove.measure.Limit;
import evenfall.bench.prove.measure.OutletCheck;
import evenfall.bench.report.Json;
import evenfall.bench.report.Paint;
import evenfall.bench.report.TextTable;
import evenfall.liquid.Application;
import evenfall.liquid.Liquid;
import evenfall.quantity.FixedDecimals;
import evenfall.quantity.TradeUnits;
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** A catch under every outlet: which are worn, which blocked, which to replace. */
final class OutletsScript implements Script {
    private static final Limit NOMINAL = new Limit(
            "outlet-nominal",
            "an outlet away from nominal",
            10,
            "pct",
            "replace an outlet that is more than 10 % off: Ohio State University Extension (7 steps for easy sprayer calibration)");
    private static final Limit MEAN = new Limit(
            "outlet-mean",
            "an outlet away from the boom's mean",
            10,
            "pct",
            "10 % greater or less than the others: Mississippi State University Extension, Turf Tips, 2009-03-16");
    private static final Limit CV = new Limit(
            "boom-cv", "CV over the boom", 10, "pct", "our choice: what holds for each outlet holds for their spread");
    private static final Limit SHARE = new Limit(
            "outlets-faulty",
            "share of outlets that are not fine, above which the whole set is renewed",
            33,
            "pct",
            "French order of 18 December 2008 (NOR AGRP0828914A), annex IV, 9.2.2");

    private static final int FEWEST_REPEATS = 3;
    private static final int MOST_OUTLETS = 240;

    @Override
    public List<Limit> limits() {
        return List.of(NOMINAL, MEAN, CV, SHARE);
    }

    private record Boom(
            int outlets,
            double nominalM3ps,
            @Nullable Double pressurePa,
            Vessel vessel,
            double seconds,
            double timeHalfWidthS) {
        double flow(double reading, double empty) {
            return (vessel.volumeM3(reading) - vessel.volumeM3(empty)) / seconds;
        }
    }

    @Override
    public Proof run(Dialogue dialogue, Setup setup) throws Turn {
        Cautions.liquid(dialogue);
        dialogue.say(
                "Catch from every outlet for the same time, at the same pressure, all outlets open. Look for streams that"
                        + " stray before you measure.");
        Boom boom = boom(dialogue, setup);
        double empty = boom.vessel().scale()
                ? dialogue.amount(
                        "empty",
                        "Weight of the empty vessel (0 kg when the scale is tared with it)",
                        Kind.MASS,
                        "0 kg",
                        0,
                        1e3)
                : 0;
        double[] flows = new double[boom.outlets()];
        for (int i = 0; i < flows.length; i++) {
            flows[i] = caught(
                    dialogue,
                    boom,
                    "catches[" + (i + 1) + "]",
                    "Outlet " + (i + 1) + " of " + flows.length + " from the left: catch of "
                            + Dialogue.plain(boom.seconds()) + " s",
                    empty);
        }
        double[] repeats = repeats(dialogue, boom, empty);
        Double speedMps = dialogue.more("speed", "Show what that is over the ground, at a working speed?", true)
                ? (Double) dialogue.amount("speed", "Working speed", Kind.SPEED, null, 0.3, 15)
                : null;
        double spacingM = speedMps == null ? 0 : spacingM(dialogue, setup);
        return proof(dialogue, setup, boom, flows, repeats, speedMps, spacingM);
    }

    private static Boom boom(Dialogue dialogue, Setup setup) throws Turn {
        Rig rig = setup.rig().orElse(null);
        int outlets = dialogue.whole(
                "outlets",
                "How many outlets?",
                2,
                MOST_OUTLETS,
                rig == null ? null : Integer.toString(rig.boom().outlets()));
        Vessel vessel = Vessel.ask(dialogue, setup);
        double gravity = vessel.scale() ? vessel.densityKgpM3() / Liquid.WATER_KGPM3 : 1;
        Double pressurePa = null;
        String usual = null;
        if (rig != null) {
            pressurePa = dialogue.amount(
                    "pressure", "Pressure at the outlets while you catch", Kind.PRESSURE, null, 1e4, 2e6);
            if (!vessel.scale()) {
                String density = Dialogue.plain(rig.liquid().densityKgpM3() / 1000) + " kg/L";
                gravity = dialogue.amount(
                                "density", "Density of the liquid that you catch", Kind.DENSITY, density, 700, 1800)
                        / Liquid.WATER_KGPM3;
            }
            double flow = rig.outlet().orifice().flowM3ps(pressurePa, gravity);
            usual = FixedDecimals.text(flow / TradeUnits.LPM_M3PS, 3) + " L/min";
        }
        double nominal = dialogue.amount(
                "nominal",
                "What should each outlet give, with this liquid at this pressure?",
                Kind.FLOW,
                usual,
                1e-7,
                1e-2);
        double seconds =
                dialogue.amount("catch_time", "For how long do you catch from each?", Kind.TIME, "60 s", 5, 900);
        double timeHalfWidth = dialogue.amount(
                "time_accuracy", "How far off may that time be, either way?", Kind.TIME, "0.5 s", 0, 10);
        return new Boom(outlets, nominal, pressurePa, vessel, seconds, timeHalfWidth);
    }

    private static double caught(Dialogue dialogue, Boom boom, String key, String words, double empty) throws Turn {
        double reading = dialogue.amount(key, words, boom.vessel().kind(), null, -1e3, 1e3);
        double net = reading - empty;
        if (reading < 0 || net < -boom.vessel().halfWidth()) {
            throw Vessel.notTared(
                    reading < 0
                            ? "the scale was not tared"
                            : "empty was " + boom.vessel().words(empty),
                    boom.vessel().words(net));
        }
        return Math.max(0, boom.flow(reading, empty));
    }

    private static double[] repeats(Dialogue dialogue, Boom boom, double empty) throws Turn {
        dialogue.say("Now catch from one sound outlet again and again, at least " + FEWEST_REPEATS
                + " times, six is better: that tells how well you catch.");
        List<Double> repeats = new ArrayList<>();
        while (repeats.size() < FEWEST_REPEATS
                || dialogue.more("repeats[" + (repeats.size() + 1) + "]", "Once more?", repeats.size() < 6)) {
            repeats.add(caught(
                    dialogue,
                    boom,
                    "repeats[" + (repeats.size() + 1) + "]",
                    "Catch " + (repeats.size() + 1) + " of the one outlet",
                    empty));
        }
        return repeats.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static double spacingM(Dialogue dialogue, Setup setup) throws Turn {
        String usual = setup.rig()
                .map(rig -> Dialogue.plain(rig.boom().spacingM()) + " m")
                .orElse(null);
        return dialogue.amount("spacing", "Distance between outlets", Kind.LENGTH, usual, 0.05, 3);
    }

    private Proof proof(
            Dialogue dialogue,
            Setup setup,
            Boom boom,
            double[] flows,
            double[] repeats,
            @Nullable Double speedMps,
            double spacingM) {
        Limit ofNominal = dialogue.limit(this, NOMINAL.name());
        Limit ofMean = dialogue.limit(this, MEAN.name());
        double usual = boom.nominalM3ps() * boom.seconds();
        OutletCheck check = OutletCheck.of(
                flows,
                repeats,
                boom.vessel().doubt().halfWidth() / usual,
                boom.timeHalfWidthS() / boom.seconds(),
                boom.vessel().step() / boom.vessel().densityKgpM3() / Math.sqrt(6) / boom.seconds(),
                boom.nominalM3ps(),
                ofNominal.value() / 100,
                ofMean.value() / 100);
        List<Finding> findings = List.of(
                ofNominal.judge(100 * check.worstOfNominal()),
                ofMean.judge(100 * check.worstOfMean()),
                dialogue.limit(this, CV.name()).judge(100 * check.cv()),
                dialogue.limit(this, SHARE.name()).judge(100 * check.faultyShare()));
        ObjectNode result = Json.object();
        Facts.number(result, "nominal_Lpm", check.nominalM3ps() / TradeUnits.LPM_M3PS);
        if (boom.pressurePa() != null) {
            Facts.number(result, "pressure_kPa", boom.pressurePa() / TradeUnits.KPA_PA);
        }
        result.set("boom_mean", Facts.estimate(check.mean(), 1 / TradeUnits.LPM_M3PS, "Lpm"));
        Facts.number(result, "boom_mean_off_nominal_pct", 100 * (check.mean().value() / check.nominalM3ps() - 1));
        Facts.number(result, "boom_cv_pct", 100 * check.cv());
        List<String> lines = new ArrayList<>();
        lines.add("Boom mean " + flow(dialogue, check.mean().value()) + " ± "
                + flow(dialogue, check.mean().expanded())
                + " (95 %), " + Units.signed(100 * (check.mean().value() / check.nominalM3ps() - 1), 1)
                + " % off nominal; CV " + FixedDecimals.text(100 * check.cv(), 1) + " %");
        lines.addAll(table(dialogue, check, result));
        over(setup, speedMps, spacingM, check, result, lines);
        return new Proof(
                "outlets",
                findings,
                List.of(),
                result,
                List.of(
                        "One catch from each outlet for the same time at one pressure; nominal from the rated point by the orifice law"
                                + " Q = K √(p/SG), or as given.",
                        boom.vessel().method(),
                        "Uncertainty by the GUM (JCGM 100:2008): scatter of repeated catches of one outlet (type A), bounds of vessel"
                                + " and time as rectangles (type B), coverage 95.45 %."),
                lines,
                advice(dialogue, check));
    }

    private static String flow(Dialogue dialogue, double m3ps) {
        return dialogue.units() == Units.METRIC
                ? FixedDecimals.text(m3ps / TradeUnits.LPM_M3PS, 3) + " L/min"
                : FixedDecimals.text(m3ps / TradeUnits.GPM_M3PS, 4) + " US gal/min";
    }

    private static List<String> table(Dialogue dialogue, OutletCheck check, ObjectNode result) {
        TextTable table = new TextTable(Paint.OFF, 1, "outlet", "flow", "of nominal %", "of mean %", "state");
        ArrayNode nodes = result.putArray("outlets");
        int fine = 0;
        for (OutletCheck.Outlet outlet : check.outlets()) {
            ObjectNode node = nodes.addObject();
            node.put("outlet", outlet.number());
            Facts.number(node, "flow_Lpm", outlet.flow().value() / TradeUnits.LPM_M3PS);
            Facts.number(node, "expanded_uncertainty_Lpm", outlet.flow().expanded() / TradeUnits.LPM_M3PS);
            Facts.number(node, "off_nominal_pct", 100 * outlet.ofNominal());
            Facts.number(node, "off_mean_pct", 100 * outlet.ofMean());
            node.put("state", outlet.state().name().toLowerCase(Locale.ROOT));
            node.put("doubtful", outlet.doubtful());
            if (outlet.state() == OutletCheck.State.FINE && !outlet.doubtful()) {
                fine++;
                continue;
            }
            table.row(
                    Integer.toString(outlet.number()),
                    flow(dialogue, outlet.flow().value()),
                    Units.signed(100 * outlet.ofNominal(), 1),
                    Units.signed(100 * outlet.ofMean(), 1),
                    outlet.state().words() + (outlet.doubtful() ? ", but within its uncertainty of a limit" : ""));
        }
        List<String> lines = new ArrayList<>();
        lines.add(fine + " of " + check.outlets().size() + " outlets are fine"
                + (fine == check.outlets().size() ? "." : "; the others:"));
        if (fine < check.outlets().size()) {
            lines.addAll(table.lines());
        }
        return lines;
    }

    private static void over(
            Setup setup,
            @Nullable Double speedMps,
            double spacingM,
            OutletCheck check,
            ObjectNode result,
            List<String> lines) {
        if (speedMps == null) {
            return;
        }
        double rateM = Application.rateM(check.mean().value(), speedMps, spacingM);
        Course128 course = Course128.of(spacingM, speedMps);
        ObjectNode node = result.putObject("over_ground");
        Facts.number(node, "speed_mps", speedMps);
        Facts.number(node, "spacing_m", spacingM);
        Facts.number(node, "rate_Lpha", rateM / TradeUnits.LPHA_M);
        Facts.number(node, "course_128th_acre_m", course.courseM());
        Facts.number(node, "course_128th_acre_s", course.seconds());
        Facts.number(
                node, "ounces_as_US_gal_per_acre", course.ounces(check.mean().value()));
        lines.add("At " + setup.units().speed(speedMps) + " the mean outlet gives "
                + setup.units().rate(rateM) + ".");
        lines.add("1/128 acre: drive " + FixedDecimals.text(course.courseM() / TradeUnits.FOOT_M, 0) + " ft ("
                + FixedDecimals.text(course.courseM(), 1) + " m), or catch for "
                + FixedDecimals.text(course.seconds(), 1)
                + " s: US fl oz from one outlet = US gal/ac, here "
                + FixedDecimals.text(course.ounces(check.mean().value()), 1) + ".");
    }

    private List<String> advice(Dialogue dialogue, OutletCheck check) {
        List<String> advice = new ArrayList<>();
        add(advice, check, OutletCheck.State.BLOCKED, "Blocked: take out, clean with a soft brush, catch again");
        add(advice, check, OutletCheck.State.LOW, "Low: clean strainer and outlet, catch again; replace if it stays");
        add(advice, check, OutletCheck.State.WORN, "Replace (worn, or the wrong size)");
        add(advice, check, OutletCheck.State.APART, "Off the others, though near nominal: clean or replace");
        List<String> doubtful = check.outlets().stream()
                .filter(OutletCheck.Outlet::doubtful)
                .map(o -> Integer.toString(o.number()))
                .toList();
        if (!doubtful.isEmpty()) {
            advice.add("Catch again, longer, since they lie within their uncertainty of a limit: "
                    + String.join(", ", doubtful) + ".");
        }
        Limit share = dialogue.limit(this, SHARE.name());
        if (100 * check.faultyShare() > share.value()) {
            advice.add("More than " + Dialogue.plain(share.value()) + " % are not fine: renew the whole set.");
        }
        if (Math.abs(check.mean().value() / check.nominalM3ps() - 1) > 0.05) {
            advice.add(
                    "The whole boom is off nominal: check the gauge, the pressure and the density before you blame the outlets.");
        }
        return advice;
    }

    private static void add(List<String> advice, OutletCheck check, OutletCheck.State state, String what) {
        List<String> numbers = check.outlets().stream()
                .filter(o -> o.state() == state)
                .map(o -> Integer.toString(o.number()))
                .toList();
        if (!numbers.isEmpty()) {
            advice.add(what + ": " + String.join(", ", numbers) + ".");
        }
    }
}
