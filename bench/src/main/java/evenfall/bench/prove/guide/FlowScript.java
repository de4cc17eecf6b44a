package evenfall.bench.prove.guide;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.prove.measure.AmountDoubt;
import evenfall.bench.prove.measure.Finding;
import evenfall.bench.prove.measure.Limit;
import evenfall.bench.prove.measure.PulseCalibration;
import evenfall.bench.prove.measure.PulseRun;
import evenfall.bench.report.Json;
import evenfall.bench.report.Paint;
import evenfall.bench.report.TextTable;
import evenfall.quantity.FixedDecimals;
import evenfall.quantity.TradeUnits;
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Catch tests of a flow meter at one or several flows: its K-factor. */
final class FlowScript implements Script {
    private static final Limit UNCERTAINTY = new Limit(
            "k-uncertainty",
            "expanded uncertainty of K",
            1,
            "pct",
            "our choice: a fifth of the 5 % that a flow indicator may be off");
    private static final Limit LINEARITY = new Limit(
            "k-linearity",
            "a flow's K away from the mean",
            5,
            "pct",
            "French order of 18 December 2008 (NOR AGRP0828914A), annex IV, 5.5.2: a flow indicator is at fault beyond 5 %");
    private static final Limit REPEATABILITY = new Limit(
            "k-repeatability", "standard deviation of one run", 1, "pct", "our choice: a catch by hand does better");

    @Override
    public List<Limit> limits() {
        return List.of(UNCERTAINTY, LINEARITY, REPEATABILITY);
    }

    @Override
    public Proof run(Dialogue dialogue, Setup setup) throws Turn {
        Cautions.liquid(dialogue);
        dialogue.say(
                "Catch all that passes the meter: begin and end with the flow shut off, the hose full, the vessel in place.");
        Vessel vessel = Vessel.ask(dialogue, setup);
        double liquidC =
                dialogue.amount("liquid_temperature", "Temperature of the liquid", Kind.TEMPERATURE, null, -20, 50);
        List<PulseRun> runs = runs(dialogue, vessel);
        PulseCalibration found = PulseCalibration.of(runs, vessel.doubt());
        return proof(dialogue, setup, vessel, liquidC, runs, found);
    }

    private List<PulseRun> runs(Dialogue dialogue, Vessel vessel) throws Turn {
        List<PulseRun> runs = new ArrayList<>();
        String lastFlow = "working flow";
        while (runs.isEmpty() || more(dialogue, runs, vessel.doubt())) {
            String run = "runs[" + (runs.size() + 1) + "].";
            lastFlow = dialogue.label(
                    run + "flow", "Run " + (runs.size() + 1) + ": which flow setting (any name)?", "low", lastFlow);
            double empty =
                    dialogue.amount(run + "empty", "Reading with the vessel empty", vessel.kind(), null, -1e4, 1e4);
            if (empty < 0) {
                throw new Refusal(
                        vessel.words(empty) + " for an empty vessel: the scale was not tared",
                        "0 kg or what the empty vessel weighs");
            }
            Recording.Count count = dialogue.count(
                    run + "counted", "Let it flow into the vessel, then shut it off.", Step.Counting.FLOW);
            double full = dialogue.amount(run + "full", "Reading with the vessel full", vessel.kind(), null, -1e4, 1e4);
            if (full - empty <= 2 * vessel.halfWidth()) {
                throw Vessel.notTared(
                        full < 0 ? "the scale was not tared" : "empty was " + vessel.words(empty),
                        vessel.words(full - empty));
            }
            PulseRun done = new PulseRun(
                    lastFlow, pulses(count), vessel.volumeM3(full) - vessel.volumeM3(empty), count.seconds());
            warnWhenApart(dialogue, runs, done);
            runs.add(done);
        }
        return runs;
    }

    static double pulses(Recording.Count count) {
        Long pulses = count.pulses();
        if (pulses == null) {
            throw new IllegalStateException("a count without pulses was let through");
        }
        return pulses;
    }

    private static void warnWhenApart(Dialogue dialogue, List<PulseRun> before, PulseRun now) {
        double sum = 0;
        int n = 0;
        for (PulseRun run : before) {
            if (run.group().equals(now.group())) {
                sum += run.perUnit();
                n++;
            }
        }
        double apart = n == 0 ? 0 : now.perUnit() / (sum / n) - 1;
        if (Math.abs(apart) > 0.1) {
            dialogue.say(
                    "This run's K is " + Units.signed(100 * apart, 0)
                            + " % off the runs before it. Air in the line, a spill, or a reading mistaken? Look before you go on.");
        }
    }

    private boolean more(Dialogue dialogue, List<PulseRun> runs, AmountDoubt doubt) throws Turn {
        String key = "runs[" + (runs.size() + 1) + "]";
        String few = tooFew(runs);
        if (few != null) {
            boolean more = dialogue.more(key, "Another run? Needed: " + few, true);
            if (!more) {
                throw new Refusal(
                        "that is too few: " + few, "at least " + PulseCalibration.FEWEST_RUNS + " runs at each flow");
            }
            return true;
        }
        Limit limit = dialogue.limit(this, UNCERTAINTY.name());
        PulseCalibration sofar = PulseCalibration.of(runs, doubt);
        boolean enough = 100 * sofar.constant().relative() <= limit.value();
        return dialogue.more(key, "Another run? " + soFar(sofar, limit, runs.size()), !enough);
    }

    private static @Nullable String tooFew(List<PulseRun> runs) {
        for (PulseRun one : runs) {
            long n = runs.stream().filter(r -> r.group().equals(one.group())).count();
            if (n < PulseCalibration.FEWEST_RUNS) {
                return one.group() + " has " + n + " of " + PulseCalibration.FEWEST_RUNS + " runs";
            }
        }
        return null;
    }

    static String soFar(PulseCalibration found, Limit limit, int runs) {
        String now = "So far ± " + FixedDecimals.text(100 * found.constant().relative(), 2) + " %";
        if (100 * found.constant().relative() <= limit.value()) {
            return now + ", which is enough.";
        }
        int needed = found.runsNeeded(limit.value() / 100);
        return now
                + (needed == 0
                        ? "; no number of runs brings " + Dialogue.plain(limit.value())
                                + " %: measure the amount better, or a larger one."
                        : "; about " + Math.max(1, needed - runs) + " more would bring " + Dialogue.plain(limit.value())
                                + " %.");
    }

    private Proof proof(
            Dialogue dialogue,
            Setup setup,
            Vessel vessel,
            double liquidC,
            List<PulseRun> runs,
            PulseCalibration found) {
        Units units = dialogue.units();
        List<Finding> findings = new ArrayList<>();
        findings.add(dialogue.limit(this, UNCERTAINTY.name())
                .judge(100 * found.constant().relative()));
        findings.add(dialogue.limit(this, REPEATABILITY.name()).judge(100 * found.repeatability()));
        List<String> advice = new ArrayList<>();
        if (found.groups().size() > 1) {
            findings.add(dialogue.limit(this, LINEARITY.name()).judge(100 * found.worstGroup()));
        } else {
            advice.add(
                    "One flow only: whether K is the same at other flows is not known. Try the lowest and the highest that you use.");
        }
        adviseRuns(dialogue, runs, found, advice);
        Double believed = setup.rig()
                .flatMap(rig -> rig.sensors().flow())
                .map(Rig.Flow::pulsesPerM3)
                .orElse(null);
        Constant constant = new Constant(
                "sensors.flow.pulses_per_L",
                "sensors.flow",
                "flow meter",
                "pulses_per_L",
                found.constant().scaled(TradeUnits.LITRE_M3));
        if (believed != null) {
            double off = found.constant().value() / believed - 1;
            advice.add(
                    found.constant().holds(believed)
                            ? "The rig file's K of " + Dialogue.plain(believed / 1000) + " pulses/L agrees."
                            : "The rig file has " + Dialogue.plain(believed / 1000) + " pulses/L: rates are shown "
                                    + FixedDecimals.text(100 * Math.abs(off), 1) + " % too "
                                    + (off < 0 ? "low" : "high")
                                    + ". Write the new K into the rig file; --write-rig does.");
        }
        List<String> lines = new ArrayList<>();
        lines.add("K-factor " + constant.text() + " ± " + constant.expandedText() + " pulses/L (95 %, k = "
                + FixedDecimals.text(found.constant().factor(), 2) + ")"
                + (units == Units.US
                        ? ", " + FixedDecimals.text(found.constant().value() * TradeUnits.US_GALLON_M3, 1)
                                + " pulses/US gal"
                        : ""));
        TextTable table =
                new TextTable(Paint.OFF, 1, "flow setting", "flow", "runs", "K pulses/L", "± (95 %)", "off the mean %");
        ObjectNode result = Json.object();
        result.set("k_factor", Facts.estimate(found.constant(), 1e-3, "pulses_per_L"));
        Facts.number(result, "run_sd_pulses_per_L", found.runSd() / 1000);
        Facts.number(result, "liquid_temperature_C", liquidC);
        if (believed != null) {
            Facts.number(result, "rig_pulses_per_L", believed / 1000);
        }
        ArrayNode flows = result.putArray("flows");
        for (PulseCalibration.Group group : found.groups()) {
            double off = group.constant().value() / found.constant().value() - 1;
            table.row(
                    group.name(),
                    units.flow(group.amountPerS()),
                    Integer.toString(group.runs().size()),
                    FixedDecimals.text(group.constant().value() / 1000, 3),
                    FixedDecimals.text(group.constant().expanded() / 1000, 3),
                    Units.signed(100 * off, 2));
            ObjectNode node = flows.addObject();
            node.put("flow", group.name());
            Facts.number(node, "flow_Lpm", group.amountPerS() / TradeUnits.LPM_M3PS);
            node.set("k_factor", Facts.estimate(group.constant(), 1e-3, "pulses_per_L"));
            Facts.number(node, "off_mean_pct", 100 * off);
            Facts.numbers(node, "runs_pulses_per_L", group.runs(), 1e-3);
        }
        lines.addAll(table.lines());
        return new Proof(
                "flow",
                findings,
                List.of(constant),
                result,
                List.of(
                        "K = pulses / volume for each run, from standstill to standstill; K-factor = mean of the flows' means.",
                        vessel.method(),
                        "Uncertainty by the GUM (JCGM 100:2008): scatter of runs pooled over the flows (type A), bounds of scale"
                                + " or jug and density as rectangles (type B), effective degrees of freedom by"
                                + " Welch-Satterthwaite, coverage 95.45 %."),
                lines,
                advice);
    }

    private void adviseRuns(Dialogue dialogue, List<PulseRun> runs, PulseCalibration found, List<String> advice) {
        Limit limit = dialogue.limit(this, UNCERTAINTY.name());
        if (100 * found.constant().relative() > limit.value()) {
            advice.add(soFar(found, limit, runs.size()));
        }
    }
}
