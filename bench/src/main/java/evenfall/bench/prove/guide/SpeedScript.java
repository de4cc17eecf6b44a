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
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import java.util.ArrayList;
import java.util.List;

/** Wheel pulses or a receiver against a measured course, or wheel pulses against a receiver. */
final class SpeedScript implements Script {
    private static final String SPEED_SOURCE =
            "French order of 18 December 2008 (NOR AGRP0828914A), annex IV, 5.5.1.2: a speed indicator is at fault beyond 5 %";
    private static final Limit UNCERTAINTY = new Limit(
            "speed-uncertainty",
            "expanded uncertainty of the constant",
            1,
            "pct",
            "our choice: a fifth of the 5 % that a speed indicator may be off");
    private static final Limit SLIP =
            new Limit("slip-spread", "difference between the grounds", 5, "pct", SPEED_SOURCE);
    private static final Limit ERROR =
            new Limit("receiver-error", "receiver against the course", 5, "pct", SPEED_SOURCE);

    @Override
    public List<Limit> limits() {
        return List.of(UNCERTAINTY, SLIP, ERROR);
    }

    private record Course(boolean wheel, boolean byReceiver, double metres, AmountDoubt doubt) {}

    @Override
    public Proof run(Dialogue dialogue, Setup setup) throws Turn {
        Cautions.driving(dialogue);
        dialogue.say("Tank half full, tyres as in the field. Begin and end each run at a standstill, on the marks.");
        Course course = course(dialogue);
        List<PulseRun> runs = new ArrayList<>();
        String ground = "field";
        while (runs.isEmpty() || more(dialogue, runs, course)) {
            String run = "runs[" + (runs.size() + 1) + "].";
            ground = dialogue.label(
                    run + "ground", "Run " + (runs.size() + 1) + ": which ground (any name)?", "stubble", ground);
            Recording.Count count = dialogue.count(
                    run + "counted",
                    course.byReceiver() ? "Drive straight, at least 100 m, and stop." : "Drive from mark to mark.",
                    signal(course));
            double metres = course.byReceiver() ? metres(count) : course.metres();
            runs.add(new PulseRun(
                    ground, course.wheel() ? FlowScript.pulses(count) : metres(count), metres, count.seconds()));
        }
        return proof(dialogue, setup, course, runs);
    }

    private static Course course(Dialogue dialogue) throws Turn {
        boolean wheel = dialogue.choice("sensor", "What is tried?", List.of("wheel", "receiver"), "wheel")
                .equals("wheel");
        boolean byReceiver = wheel
                && dialogue.choice(
                                "against",
                                "Against a measured course, or the receiver's own distance?",
                                List.of("course", "receiver"),
                                "course")
                        .equals("receiver");
        if (byReceiver) {
            // Speeds of a receiver carry no scale error to speak of; what is left is delay at start and stop.
            double share = dialogue.amount(
                    "receiver_accuracy",
                    "How far off may the receiver's distance be, either way?",
                    Kind.SHARE,
                    "0.5 %",
                    0,
                    0.1);
            return new Course(true, true, 0, new AmountDoubt(0, share, 0, 1, "tape", "receiver"));
        }
        double metres = dialogue.amount("course", "Length of the course, by the tape", Kind.LENGTH, null, 10, 2000);
        double tapeM = dialogue.amount(
                "course_accuracy", "How far off may that length be, either way?", Kind.LENGTH, "0.1 m", 0, 10);
        return new Course(wheel, false, metres, new AmountDoubt(tapeM, 0, 0, wheel ? 1 : 0.01, "tape", "receiver"));
    }

    private static Step.Counting signal(Course course) {
        if (!course.wheel()) {
            return Step.Counting.RECEIVER;
        }
        return course.byReceiver() ? Step.Counting.WHEEL_AND_RECEIVER : Step.Counting.WHEEL;
    }

    private static double metres(Recording.Count count) {
        Double metres = count.metres();
        if (metres == null) {
            throw new IllegalStateException("a count without metres was let through");
        }
        return metres;
    }

    private boolean more(Dialogue dialogue, List<PulseRun> runs, Course course) throws Turn {
        String key = "runs[" + (runs.size() + 1) + "]";
        for (PulseRun one : runs) {
            long n = runs.stream().filter(r -> r.group().equals(one.group())).count();
            if (n < PulseCalibration.FEWEST_RUNS) {
                String few = one.group() + " has " + n + " of " + PulseCalibration.FEWEST_RUNS + " runs";
                if (!dialogue.more(key, "Another run? Needed: " + few, true)) {
                    throw new Refusal(
                            "that is too few: " + few,
                            "at least " + PulseCalibration.FEWEST_RUNS + " runs on each ground");
                }
                return true;
            }
        }
        Limit limit = dialogue.limit(this, UNCERTAINTY.name());
        PulseCalibration sofar = PulseCalibration.of(runs, course.doubt());
        boolean enough = 100 * sofar.constant().relative() <= limit.value();
        return dialogue.more(key, "Another run? " + FlowScript.soFar(sofar, limit, runs.size()), !enough);
    }

    private Proof proof(Dialogue dialogue, Setup setup, Course course, List<PulseRun> runs) {
        PulseCalibration found = PulseCalibration.of(runs, course.doubt());
        List<Finding> findings = new ArrayList<>();
        List<String> advice = new ArrayList<>();
        List<String> lines = new ArrayList<>();
        ObjectNode result = Json.object();
        String unit = course.wheel() ? "pulses_per_m" : "m_per_m";
        findings.add(dialogue.limit(this, UNCERTAINTY.name())
                .judge(100 * found.constant().relative()));
        List<Constant> constants = List.of();
        if (course.wheel()) {
            Rig.Wheel wheel = setup.rig().flatMap(rig -> rig.sensors().wheel()).orElse(null);
            boolean hasPlace = setup.rig().isEmpty() || wheel != null;
            Constant constant = new Constant(
                    hasPlace ? "sensors.wheel.pulses_per_m" : null,
                    "sensors",
                    "wheel",
                    "pulses_per_m",
                    found.constant());
            constants = List.of(constant);
            lines.add("Wheel " + constant.text() + " ± " + constant.expandedText() + " pulses/m (95 %, k = "
                    + FixedDecimals.text(found.constant().factor(), 2) + ")");
            if (wheel != null) {
                double off = found.constant().value() / wheel.pulsesPerM() - 1;
                advice.add(
                        found.constant().holds(wheel.pulsesPerM())
                                ? "The rig file's " + Dialogue.plain(wheel.pulsesPerM()) + " pulses/m agree."
                                : "The rig file has " + Dialogue.plain(wheel.pulsesPerM())
                                        + " pulses/m: the wheel's speed is shown "
                                        + FixedDecimals.text(100 * Math.abs(off), 1) + " % too "
                                        + (off > 0 ? "high" : "low")
                                        + ". Write the new one into the rig file; --write-rig does.");
            } else if (!hasPlace) {
                advice.add("The rig file names no wheel sensor; --write-rig leaves the constant as a remark.");
            }
            if (found.groups().size() > 1) {
                findings.add(dialogue.limit(this, SLIP.name()).judge(100 * found.groupRange()));
            } else {
                advice.add(
                        "One ground only: how much the wheel slips elsewhere is not known. Try hard and soft ground.");
            }
        } else {
            double error = found.constant().value() - 1;
            findings.add(dialogue.limit(this, ERROR.name()).judge(100 * Math.abs(error)));
            lines.add("Receiver " + Units.signed(100 * error, 2) + " % ± "
                    + FixedDecimals.text(100 * found.constant().expanded(), 2) + " % against the course (95 %)");
        }
        Limit limit = dialogue.limit(this, UNCERTAINTY.name());
        if (100 * found.constant().relative() > limit.value()) {
            advice.add(FlowScript.soFar(found, limit, runs.size()));
        }
        result.set(course.wheel() ? "wheel" : "receiver", Facts.estimate(found.constant(), 1, unit));
        Facts.number(result, "run_sd_pct", 100 * found.repeatability());
        Facts.number(result, "slip_spread_pct", 100 * found.groupRange());
        TextTable table = new TextTable(
                Paint.OFF,
                1,
                "ground",
                "speed",
                "runs",
                course.wheel() ? "pulses/m" : "m per m",
                "± (95 %)",
                "off the mean %");
        ArrayNode grounds = result.putArray("grounds");
        for (PulseCalibration.Group group : found.groups()) {
            double off = group.constant().value() / found.constant().value() - 1;
            table.row(
                    group.name(),
                    dialogue.units().speed(group.amountPerS()),
                    Integer.toString(group.runs().size()),
                    FixedDecimals.text(group.constant().value(), 4),
                    FixedDecimals.text(group.constant().expanded(), 4),
                    Units.signed(100 * off, 2));
            ObjectNode node = grounds.addObject();
            node.put("ground", group.name());
            Facts.number(node, "mean_speed_mps", group.amountPerS());
            node.set("constant", Facts.estimate(group.constant(), 1, unit));
            Facts.number(node, "off_mean_pct", 100 * off);
            Facts.numbers(node, "runs_" + unit, group.runs(), 1);
        }
        lines.addAll(table.lines());
        return new Proof(
                "speed",
                findings,
                constants,
                result,
                List.of(
                        course.byReceiver()
                                ? "Distance = the receiver's speed (RMC) summed over time, from standstill to standstill."
                                : "Distance = a course measured by tape, from standstill to standstill.",
                        "Constant = mean of the grounds' means. Uncertainty by the GUM (JCGM 100:2008): scatter of runs pooled over"
                                + " the grounds (type A), bounds of tape or receiver as rectangles (type B), effective degrees of"
                                + " freedom by Welch-Satterthwaite, coverage 95.45 %."),
                lines,
                advice);
    }
}
