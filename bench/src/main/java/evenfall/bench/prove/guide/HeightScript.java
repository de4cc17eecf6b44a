package evenfall.bench.prove.guide;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.prove.measure.EchoSeries;
import evenfall.bench.prove.measure.Finding;
import evenfall.bench.prove.measure.HeightCalibration;
import evenfall.bench.prove.measure.Limit;
import evenfall.bench.prove.measure.Spread;
import evenfall.bench.prove.measure.StepResponse;
import evenfall.bench.report.Json;
import evenfall.bench.report.Paint;
import evenfall.bench.report.TextTable;
import evenfall.quantity.FixedDecimals;
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import evenfall.sense.HeightSense;
import evenfall.wire.HeightEchoes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Height sensors one after another: where they sit, what they make of known heights, how fast they follow. */
final class HeightScript implements Script {
    private static final Limit UNCERTAINTY = new Limit(
            "height-uncertainty",
            "expanded uncertainty of the mounting height",
            10,
            "mm",
            "our choice: a fiftieth of a usual boom height");
    private static final Limit SCALE = new Limit(
            "height-scale",
            "metres shown for a metre, away from 1",
            2,
            "pct",
            "our choice: air 11 °C off makes as much (speed of sound)");
    private static final Limit LINEARITY = new Limit(
            "height-linearity",
            "a height away from the line",
            10,
            "mm",
            "our choice: a fiftieth of a usual boom height");
    private static final Limit NOISE = new Limit(
            "height-noise",
            "standard deviation of one reading",
            10,
            "mm",
            "our choice: a fiftieth of a usual boom height");
    private static final Limit OUTLIERS = new Limit(
            "height-outliers",
            "echoes of something else",
            2,
            "pct",
            "our choice: the middle of three rids of single ones");
    private static final Limit MISSING = new Limit(
            "height-missing", "times without an echo", 5, "pct", "our choice: a sound sensor over a board misses none");
    private static final Limit SETTLED = new Limit(
            "height-settled",
            "from a step to nine tenths of it",
            0.4,
            "s",
            "our choice: 2 m of ground at 5 m/s; the boom's control adds its own lag");
    private static final Limit AIR = new Limit(
            "air-temperature",
            "hub's thermometer against yours",
            3,
            "C",
            "our choice: half a percent of height (speed of sound)");
    private static final Limit CHANNEL =
            new Limit("sensor-order", "places off the rig's order", 0, "places", "the rig file: from left to right");
    private static final Limit PLACE = new Limit(
            "sensor-place",
            "along the boom away from the rig file",
            100,
            "mm",
            "our choice: an outlet spacing is five times that");

    private static final double RECORD_S = 5;
    private static final double CHECK_S = 2;
    private static final double STEP_S = 4;
    private static final int MOST_STEPS = 5;

    /** A board must change what a sensor says by this much to count as seen; a choice of ours, far above the noise. */
    private static final double BOARD_M = 0.1;

    /** A hand that pulls a board and presses a key at once is off by up to this, s; a choice of ours. */
    private static final double HAND_S = 0.15;

    @Override
    public List<Limit> limits() {
        return List.of(UNCERTAINTY, SCALE, LINEARITY, NOISE, OUTLIERS, MISSING, SETTLED, AIR, CHANNEL, PLACE);
    }

    /** What all sensors of a proof share. */
    private record Yard(double airC, double airHalfWidthC, double tapeM, double tapeStepM, double workingM) {}

    private record Sensor(
            String name,
            int index,
            Optional<Rig.Height> believed,
            @Nullable Integer answersAs,
            double rightM,
            List<HeightCalibration.Station> stations,
            HeightCalibration found,
            @Nullable Double hubAirC,
            List<StepResponse> steps) {}

    @Override
    public Proof run(Dialogue dialogue, Setup setup) throws Turn {
        Cautions.boom(dialogue);
        dialogue.say(
                "Set the boom down level and firm. Use a flat board, 0.5 m or more either way, as the target under a sensor.");
        Yard yard = yard(dialogue, setup);
        List<Sensor> sensors = new ArrayList<>();
        List<String> left = new ArrayList<>(setup.rig().stream()
                .flatMap(rig -> rig.sensors().heights().stream())
                .map(Rig.Height::name)
                .toList());
        boolean fromRig = !left.isEmpty();
        while (sensors.isEmpty() || another(dialogue, sensors.size(), fromRig, left.isEmpty())) {
            Sensor sensor = sensor(dialogue, setup, yard, "sensors[" + (sensors.size() + 1) + "].", left);
            left.remove(sensor.name());
            sensors.add(sensor);
        }
        return proof(dialogue, yard, sensors);
    }

    private static boolean another(Dialogue dialogue, int done, boolean fromRig, boolean noneLeft) throws Turn {
        boolean possible = fromRig ? !noneLeft : done < HeightEchoes.MOST_SENSORS;
        return possible && dialogue.more("sensors[" + (done + 1) + "]", "Another sensor?", fromRig);
    }

    private static Yard yard(Dialogue dialogue, Setup setup) throws Turn {
        double airC = dialogue.amount(
                "air", "Air temperature beside the sensors, in the shade", Kind.TEMPERATURE, null, -30, 50);
        double airHalfWidthC = dialogue.amount(
                "air_accuracy",
                "How far off may the air temperature be, either way?",
                Kind.TEMPERATURE_DIFFERENCE,
                "1 C",
                0,
                10);
        double tapeM = dialogue.amount(
                "tape_accuracy",
                "How far off may the tape be, and where you hold it, either way?",
                Kind.LENGTH,
                "2 mm",
                0,
                0.1);
        double tapeStepM =
                dialogue.amount("tape_step", "Smallest step that you read on the tape", Kind.LENGTH, "1 mm", 1e-5, 0.1);
        String usual = setup.rig()
                .map(rig -> Dialogue.plain(rig.target().heightM()) + " m")
                .orElse(null);
        double workingM = dialogue.amount(
                "working_height", "Height of the outlets in work, over the target", Kind.LENGTH, usual, 0.05, 2);
        return new Yard(airC, airHalfWidthC, tapeM, tapeStepM, workingM);
    }

    private Sensor sensor(Dialogue dialogue, Setup setup, Yard yard, String key, List<String> left) throws Turn {
        String name;
        int index;
        Optional<Rig.Height> believed = Optional.empty();
        if (left.isEmpty()) {
            name = dialogue.label(key + "name", "Name of the sensor", "left-tip", null);
            index = dialogue.whole(
                            key + "place",
                            "Its place from the left, 1 to " + HeightEchoes.MOST_SENSORS,
                            1,
                            HeightEchoes.MOST_SENSORS,
                            null)
                    - 1;
        } else {
            name = dialogue.choice(key + "name", "Which sensor?", left, left.get(0));
            List<Rig.Height> heights = setup.rig().orElseThrow().sensors().heights();
            index = 0;
            while (!heights.get(index).name().equals(name)) {
                index++;
            }
            believed = Optional.of(heights.get(index));
        }
        Integer answersAs = dialogue.more(key + "free", "Check with a board which sensor answers here?", true)
                ? mounting(dialogue, yard, key, name, index)
                : null;
        int channel = answersAs == null ? index : answersAs;
        String usual = believed.map(h -> Dialogue.plain(h.rightM()) + " m").orElse(null);
        double rightM = dialogue.amount(
                key + "right",
                "How far right of the boom's middle does " + name + " sit (left is minus)?",
                Kind.LENGTH,
                usual,
                -40,
                40);
        List<Recording.Echoes> heard = new ArrayList<>();
        List<HeightCalibration.Station> stations = stations(dialogue, yard, key, channel, heard);
        List<StepResponse> steps = steps(dialogue, yard, key, channel);
        HeightCalibration found = HeightCalibration.of(stations, doubt(yard, heard), yard.workingM());
        return new Sensor(name, index, believed, answersAs, rightM, stations, found, airOf(heard), steps);
    }

    private static HeightCalibration.Doubt doubt(Yard yard, List<Recording.Echoes> heard) {
        Double hubC = airOf(heard);
        return new HeightCalibration.Doubt(
                yard.tapeM(), yard.tapeStepM(), hubC == null ? yard.airC() : hubC, yard.airHalfWidthC());
    }

    private static @Nullable Double airOf(List<Recording.Echoes> heard) {
        double sum = 0;
        int n = 0;
        for (Recording.Echoes one : heard) {
            Double airC = one.airC();
            if (airC != null) {
                sum += airC;
                n++;
            }
        }
        return n == 0 ? null : (Double) (sum / n);
    }

    /** The speed of sound as the monitor will take it: by the hub's thermometer where there is one. */
    private static double soundMps(Yard yard, Recording.Echoes echoes) {
        Double airC = echoes.airC();
        return HeightSense.soundMps(airC == null ? yard.airC() : airC);
    }

    private static int mounting(Dialogue dialogue, Yard yard, String key, String name, int index) throws Turn {
        Recording.Echoes free = dialogue.echoes(
                key + "free", "Nothing under " + name + " but the ground. Hold still.", CHECK_S, false, index);
        Recording.Echoes covered = dialogue.echoes(
                key + "covered",
                "Hold the board 0.3 m under " + name + " and under no other sensor.",
                CHECK_S,
                false,
                index);
        int most = -1;
        double mostM = BOARD_M;
        for (int i = 0; i < Math.max(free.sensors(), covered.sensors()); i++) {
            EchoSeries before = EchoSeries.of(free.of(i), soundMps(yard, free));
            EchoSeries after = EchoSeries.of(covered.of(i), soundMps(yard, covered));
            // A sensor that heard nothing of the far ground and hears the board has seen it too.
            double changedM = after == null ? 0 : before == null ? 1 : Math.abs(before.distanceM() - after.distanceM());
            if (changedM > mostM) {
                mostM = changedM;
                most = i;
            }
        }
        if (most < 0) {
            throw new Refusal(
                    "no sensor saw the board",
                    "the board at least 0.1 m nearer than the ground was, square under the sensor");
        }
        if (most != index) {
            dialogue.say("Number " + (most + 1) + " from the left answered, not number " + (index + 1)
                    + ": leads swapped, or left for right. The test goes on with what answered.");
        }
        return most;
    }

    private List<HeightCalibration.Station> stations(
            Dialogue dialogue, Yard yard, String key, int channel, List<Recording.Echoes> heard) throws Turn {
        List<HeightCalibration.Station> stations = new ArrayList<>();
        while (stations.isEmpty() || moreStations(dialogue, yard, key, stations, heard)) {
            String at = key + "stations[" + (stations.size() + 1) + "].";
            double heightM = dialogue.amount(
                    at + "height",
                    "Height of the outlets there over the board, by the tape",
                    Kind.LENGTH,
                    null,
                    -0.5,
                    3);
            for (HeightCalibration.Station station : stations) {
                if (Math.abs(station.heightM() - heightM) < 0.02) {
                    throw new Refusal(
                            "that height was measured already",
                            "heights at least 2 cm apart, spread over 0.2 to 1.2 m or so");
                }
            }
            Recording.Echoes echoes = dialogue.echoes(at + "echoes", "Hold still.", RECORD_S, false, channel);
            EchoSeries series = EchoSeries.of(echoes.of(channel), soundMps(yard, echoes));
            if (series == null) {
                throw new Refusal(
                        "fewer than " + EchoSeries.FEWEST + " echoes came",
                        "a board square under the sensor, farther than its blind zone");
            }
            heard.add(echoes);
            stations.add(new HeightCalibration.Station(heightM, series));
        }
        return stations;
    }

    private boolean moreStations(
            Dialogue dialogue,
            Yard yard,
            String key,
            List<HeightCalibration.Station> stations,
            List<Recording.Echoes> heard)
            throws Turn {
        String next = key + "stations[" + (stations.size() + 1) + "]";
        if (stations.size() < HeightCalibration.FEWEST_STATIONS) {
            String words =
                    "Another height? Needed: " + stations.size() + " of at least " + HeightCalibration.FEWEST_STATIONS;
            if (!dialogue.more(next, words, true)) {
                throw new Refusal(
                        "that is too few: " + stations.size() + " heights",
                        "at least " + HeightCalibration.FEWEST_STATIONS + ", six is better");
            }
            return true;
        }
        HeightCalibration sofar = HeightCalibration.of(stations, doubt(yard, heard), yard.workingM());
        Limit limit = dialogue.limit(this, UNCERTAINTY.name());
        double mm = 1000 * sofar.aboveOutlet().expanded();
        boolean enough = mm <= limit.value();
        String words = "Another height? So far ± " + FixedDecimals.text(mm, 1) + " mm";
        if (enough) {
            words += ", which is enough.";
        } else {
            int needed = sofar.stationsNeeded(limit.value() / 1000);
            words += needed == 0
                    ? "; no number of heights brings " + Dialogue.plain(limit.value())
                            + " mm: a better tape or thermometer would."
                    : "; about " + Math.max(1, needed - stations.size()) + " more would bring "
                            + Dialogue.plain(limit.value()) + " mm.";
        }
        return dialogue.more(next, words, !enough);
    }

    private static List<StepResponse> steps(Dialogue dialogue, Yard yard, String key, int channel) throws Turn {
        List<StepResponse> steps = new ArrayList<>();
        while (steps.size() < MOST_STEPS
                && dialogue.more(
                        key + "steps[" + (steps.size() + 1) + "]",
                        steps.isEmpty() ? "Try how fast it follows a step?" : "Once more? Three are good.",
                        steps.size() < 3)) {
            Recording.Echoes echoes = dialogue.echoes(
                    key + "steps[" + (steps.size() + 1) + "]",
                    "Hold the board 0.3 m under it. At the mark pull it away at once.",
                    STEP_S,
                    true,
                    channel);
            double perUsM = 0.5e-6 * soundMps(yard, echoes);
            List<StepResponse.Reading> readings = new ArrayList<>();
            for (Recording.Look look : echoes.looks()) {
                Long us = channel < look.echoesUs().size() ? look.echoesUs().get(channel) : null;
                if (us != null) {
                    readings.add(new StepResponse.Reading(look.timeS(), us * perUsM));
                }
            }
            Double markS = echoes.markS();
            StepResponse step = markS == null ? null : StepResponse.of(readings, markS);
            if (step == null) {
                throw new Refusal(
                        "no clear step was seen",
                        "the board at rest for a second, pulled away at the mark, at least "
                                + Dialogue.plain(StepResponse.LEAST_STEP_M) + " m of change");
            }
            steps.add(step);
        }
        return steps;
    }

    private Proof proof(Dialogue dialogue, Yard yard, List<Sensor> sensors) {
        List<Finding> findings = new ArrayList<>();
        List<Constant> constants = new ArrayList<>();
        List<String> lines = new ArrayList<>();
        List<String> advice = new ArrayList<>();
        ObjectNode result = Json.object();
        Facts.number(result, "air_C", yard.airC());
        Facts.number(result, "working_height_m", yard.workingM());
        ArrayNode nodes = result.putArray("sensors");
        TextTable table = new TextTable(
                Paint.OFF,
                1,
                "sensor",
                "face above outlets",
                "± (95 %)",
                "scale",
                "off line",
                "noise",
                "outliers %",
                "missing %",
                "settled s");
        for (Sensor sensor : sensors) {
            judge(dialogue, sensor, findings, advice);
            HeightCalibration found = sensor.found();
            constants.add(constant(sensor));
            nodes.add(node(sensor));
            table.row(
                    sensor.name(),
                    millimetres(dialogue, found.aboveOutlet().value()),
                    millimetres(dialogue, found.aboveOutlet().expanded()),
                    FixedDecimals.text(found.line().slope(), 4),
                    millimetres(dialogue, found.nonlinearityM()),
                    millimetres(dialogue, found.noiseM()),
                    FixedDecimals.text(100 * found.outlierShare(), 1),
                    FixedDecimals.text(100 * found.missingShare(), 1),
                    sensor.steps().isEmpty() ? "-" : FixedDecimals.text(settledS(sensor), 2));
        }
        lines.addAll(table.lines());
        air(dialogue, yard, sensors, findings, result);
        return new Proof(
                "height",
                findings,
                constants,
                result,
                List.of(
                        "Distance = half the echo time times 331.3 √(1 + T/273.15) m/s, T by the hub's thermometer where it has one.",
                        "A straight line through mean distance over height by tape; the face's height above the outlets is the line's"
                                + " distance less the height, at the working height. Echoes more than five robust standard deviations"
                                + " from the median count as outliers.",
                        "Uncertainty by the GUM (JCGM 100:2008, H.3): scatter around the line (type A), bounds of tape and air"
                                + " temperature as rectangles (type B), effective degrees of freedom by Welch-Satterthwaite,"
                                + " coverage 95.45 %. A step by hand is marked within ± "
                                + Dialogue.plain(HAND_S) + " s."),
                lines,
                advice);
    }

    private void judge(Dialogue dialogue, Sensor sensor, List<Finding> findings, List<String> advice) {
        HeightCalibration found = sensor.found();
        String name = sensor.name();
        add(findings, dialogue, UNCERTAINTY, name, 1000 * found.aboveOutlet().expanded());
        add(findings, dialogue, SCALE, name, 100 * Math.abs(found.line().slope() - 1));
        add(findings, dialogue, LINEARITY, name, 1000 * found.nonlinearityM());
        add(findings, dialogue, NOISE, name, 1000 * found.noiseM());
        add(findings, dialogue, OUTLIERS, name, 100 * found.outlierShare());
        add(findings, dialogue, MISSING, name, 100 * found.missingShare());
        if (!sensor.steps().isEmpty()) {
            add(findings, dialogue, SETTLED, name, settledS(sensor));
        }
        if (!sensor.steps().isEmpty()) {
            advice.add(
                    name + ": a step marked by hand is known to ± " + Dialogue.plain(HAND_S) + " s, its rise better.");
        }
        Integer answersAs = sensor.answersAs();
        if (answersAs != null) {
            add(findings, dialogue, CHANNEL, name, Math.abs(answersAs - sensor.index()));
            if (answersAs != sensor.index()) {
                advice.add(name + " answers as number " + (answersAs + 1)
                        + " from the left: swap the leads, or the rig's order.");
            }
        }
        if (sensor.believed().isPresent()) {
            Rig.Height believed = sensor.believed().get();
            add(findings, dialogue, PLACE, name, 1000 * Math.abs(sensor.rightM() - believed.rightM()));
            double offM = found.aboveOutlet().value() - believed.aboveOutletM();
            advice.add(
                    found.aboveOutlet().holds(believed.aboveOutletM())
                            ? name + ": the rig file agrees."
                            : name + ": with the rig file as it is, heights are shown "
                                    + FixedDecimals.text(1000 * Math.abs(offM), 0) + " mm too "
                                    + (offM > 0 ? "high" : "low") + ". Write it into the rig file; --write-rig does.");
        }
        if (Math.abs(found.line().slope() - 1)
                > dialogue.limit(this, SCALE.name()).value() / 100) {
            advice.add(name + ": wrong scale. A radar corrected for air it does not need, or a wrong air temperature?");
        }
    }

    private void add(List<Finding> findings, Dialogue dialogue, Limit limit, String sensor, double measured) {
        Limit own = dialogue.limit(this, limit.name());
        findings.add(new Limit(own.name(), sensor + ": " + own.title(), own.value(), own.unit(), own.source())
                .judge(measured));
    }

    private void air(Dialogue dialogue, Yard yard, List<Sensor> sensors, List<Finding> findings, ObjectNode result) {
        for (Sensor sensor : sensors) {
            Double hubC = sensor.hubAirC();
            if (hubC != null) {
                Facts.number(result, "hub_air_C", hubC);
                findings.add(dialogue.limit(this, AIR.name()).judge(Math.abs(hubC - yard.airC())));
                return;
            }
        }
    }

    private static Constant constant(Sensor sensor) {
        int place = sensor.index() + 1;
        boolean known = sensor.believed().isPresent();
        return new Constant(
                known ? "sensors.heights.at[" + place + "].above_outlet_m" : null,
                "sensors.heights",
                sensor.name(),
                "above_outlet_m",
                sensor.found().aboveOutlet());
    }

    private static double settledS(Sensor sensor) {
        return Spread.of(sensor.steps().stream()
                        .mapToDouble(StepResponse::settledS)
                        .toArray())
                .mean();
    }

    private static String millimetres(Dialogue dialogue, double metres) {
        return dialogue.units() == Units.METRIC
                ? FixedDecimals.text(1000 * metres, 1) + " mm"
                : FixedDecimals.text(metres / 0.0254, 2) + " in";
    }

    private static ObjectNode node(Sensor sensor) {
        HeightCalibration found = sensor.found();
        ObjectNode node = Json.object();
        node.put("name", sensor.name());
        node.put("place", sensor.index() + 1);
        node.put("answers_as_place", sensor.answersAs() == null ? null : (Integer) (sensor.answersAs() + 1));
        Facts.number(node, "right_m", sensor.rightM());
        node.set("above_outlet", Facts.estimate(found.aboveOutlet(), 1, "m"));
        Facts.number(node, "scale_m_per_m", found.line().slope());
        Facts.number(node, "scale_standard_uncertainty_m_per_m", found.line().slopeStandard());
        Facts.number(node, "nonlinearity_m", found.nonlinearityM());
        Facts.number(node, "noise_sd_m", found.noiseM());
        Facts.number(node, "outliers_pct", 100 * found.outlierShare());
        Facts.number(node, "missing_pct", 100 * found.missingShare());
        ArrayNode stations = node.putArray("stations");
        for (HeightCalibration.Station station : sensor.stations()) {
            ObjectNode one = stations.addObject();
            Facts.number(one, "height_m", station.heightM());
            Facts.number(one, "distance_m", station.echoes().distanceM());
            Facts.number(one, "noise_sd_m", station.echoes().noiseM());
            one.put("asked", station.echoes().asked());
            one.put("missing", station.echoes().missing());
            one.put("outliers", station.echoes().outliers());
        }
        if (!sensor.steps().isEmpty()) {
            double[] delays =
                    sensor.steps().stream().mapToDouble(StepResponse::delayS).toArray();
            double[] rises =
                    sensor.steps().stream().mapToDouble(StepResponse::riseS).toArray();
            ObjectNode step = node.putObject("step");
            step.put("steps", delays.length);
            Facts.number(step, "delay_s", Spread.of(delays).mean());
            Facts.number(step, "delay_bound_by_hand_s", HAND_S);
            Facts.number(step, "rise_10_to_90_pct_s", Spread.of(rises).mean());
            Facts.number(step, "settled_s", settledS(sensor));
        }
        return node;
    }
}
