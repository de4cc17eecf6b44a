package evenfall.bench.choose;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.report.Json;
import evenfall.pattern.HeightWindow;
import evenfall.quantity.TradeUnits;
import evenfall.quantity.Units;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The answer of {@code choose --json}: the unit in every key, ratios and not percent, null for what is not known. */
public final class ChooseJson {
    private static final int RATIO = 6;
    private static final int LENGTH_M = 4;
    private static final int RATE_LPHA = 4;
    private static final int SPEED_MPS = 6;
    private static final int FLOW_LPM = 6;
    private static final int PRESSURE_KPA = 3;

    private ChooseJson() {}

    public static ObjectNode of(Choice choice) {
        ObjectNode root = Json.object();
        root.set("job", job(choice.job()));
        ObjectNode weights = root.putObject("weights");
        for (Criterion criterion : Criterion.values()) {
            weights.set(criterion.word(), Json.number(choice.weights().of(criterion), RATIO));
        }
        ArrayNode leftOut = root.putArray("left_out");
        choice.leftOut().forEach(criterion -> leftOut.add(criterion.word()));
        ObjectNode leaf = root.putObject("leaf_contact");
        leaf.put("caveat", LeafContact.CAVEAT);
        leaf.set("product_factor", Json.number(choice.factors().product(), RATIO));
        leaf.put("product_why", choice.factors().productWhy());
        leaf.set("weather_factor", Json.number(choice.factors().weather(), RATIO));
        leaf.put("weather_why", choice.factors().weatherWhy());
        Words words = new Words(choice, Units.METRIC);
        root.put("verdict", words.verdict());
        ArrayNode outlets = root.putArray("outlets");
        for (Choice.Ranked one : choice.ranked()) {
            outlets.add(outlet(choice, one, words));
        }
        return root;
    }

    private static ObjectNode job(Job job) {
        ObjectNode node = Json.object();
        node.put("outlets", job.outlets());
        node.set("width_m", Json.number(job.widthM(), LENGTH_M));
        node.set("spacing_m", Json.number(job.spacingM(), LENGTH_M));
        node.set("row_m", Json.number(job.rowM(), LENGTH_M));
        span(node, "rate", "Lpha", job.ratesM(), TradeUnits.LPHA_M, RATE_LPHA);
        span(node, "speed", "mps", job.speedsMps(), 1, SPEED_MPS);
        span(node, "pressure", "kPa", job.pressuresPa(), TradeUnits.KPA_PA, PRESSURE_KPA);
        node.put("product", job.product().id());
        node.set("density_kgpL", Json.number(job.product().densityKgpM3() / 1000, RATIO));
        node.set("nitrogen_kgpL", Json.number(job.product().nitrogenKgpM3() / 1000, RATIO));
        node.set("sg", Json.number(job.specificGravity(), RATIO));
        node.set("thiosulphate_share", Json.number(job.thiosulphateShare(), RATIO));
        node.set("height_m", Json.number(job.heightM(), LENGTH_M));
        boolean within = job.wander().kind() == Wander.Kind.WITHIN;
        node.set("height_sd_m", Json.number(within ? null : job.wander().metres(), LENGTH_M));
        node.set("height_within_m", Json.number(within ? job.wander().metres() : null, LENGTH_M));
        node.set("limit_row_cv", Json.number(job.limitCv(), RATIO));
        node.set("air_C", Json.number(job.airC(), 2));
        return node;
    }

    private static void span(
            ObjectNode node, String name, String unit, @Nullable Span span, double unitSi, int decimals) {
        node.set(name + "_low_" + unit, Json.number(span == null ? null : span.low() / unitSi, decimals));
        node.set(name + "_high_" + unit, Json.number(span == null ? null : span.high() / unitSi, decimals));
    }

    private static ObjectNode outlet(Choice choice, Choice.Ranked one, Words words) {
        Job job = choice.job();
        Candidate candidate = one.candidate();
        Cover cover = candidate.cover();
        ObjectNode node = Json.object();
        node.put("outlet", candidate.type().id());
        node.put("title", candidate.type().title());
        node.put("bar", candidate.bar());
        node.put("metering_sizes_in_one", candidate.sizesInOne());
        node.set("score", Json.number(one.score(), RATIO));
        ObjectNode scores = node.putObject("scores");
        one.scores().forEach((criterion, score) -> scores.set(criterion.word(), Json.number(score, RATIO)));
        ArrayNode reasons = node.putArray("reasons");
        for (Words.Reason reason : words.reasons(one)) {
            reasons.addObject()
                    .put("speaks", reason.mark().name().toLowerCase(Locale.ROOT))
                    .put("text", reason.text());
        }
        span(node, "window", "kPa", candidate.windowPa(), TradeUnits.KPA_PA, PRESSURE_KPA);
        node.set("size_rated_kPa", Json.number(candidate.type().ratedPressurePa() / TradeUnits.KPA_PA, PRESSURE_KPA));
        node.set("reached_share", Json.number(candidate.reachedShare(), RATIO));
        node.put("shortfall", cover == null ? words.shortfall(candidate) : null);
        if (cover == null) {
            node.putNull("sets");
        } else {
            node.put("sets", cover.sets());
        }
        reaches(node.putArray("sizes_that_reach"), candidate, job);
        steps(node.putArray("steps"), cover);
        changeovers(node.putArray("changeovers"), cover, job);
        corners(node.putArray("corners"), candidate);
        evenness(node, candidate.evenness());
        LeafContact contact = candidate.contact();
        Double least = choice.leastContactMpM();
        ObjectNode leaf = node.putObject("leaf_contact");
        leaf.set("wetted_m_per_m", Json.number(contact == null ? null : contact.wettedMpM(), RATIO));
        leaf.set(
                "over_least",
                Json.number(contact == null || least == null ? null : contact.wettedMpM() / least, RATIO));
        leaf.set("pressure_kPa", Json.number(contact == null ? null : contact.pressurePa() / 1000, PRESSURE_KPA));
        ObjectNode cost = node.putObject("cost");
        cost.set("amount", Json.number(candidate.cost().amount(), 2));
        cost.put("currency", candidate.cost().currency());
        cost.put("note", candidate.cost().note());
        cost.put("unknown_why", candidate.cost().why());
        ArrayNode notes = node.putArray("handling");
        HandlingNotes.of(candidate.bar()).forEach(notes::add);
        return node;
    }

    private static void reaches(ArrayNode array, Candidate candidate, Job job) {
        for (Reach reach : candidate.reaches()) {
            ObjectNode node = array.addObject();
            node.set("size_Lpm", Json.number(reach.sizeM3ps() / TradeUnits.LPM_M3PS, FLOW_LPM));
            node.set("share", Json.number(reach.share(), RATIO));
            span(node, "flow", "Lpm", reach.flowsM3ps(), TradeUnits.LPM_M3PS, FLOW_LPM);
            double slowest = job.speedsMps().low() * job.spacingM();
            double fastest = job.speedsMps().high() * job.spacingM();
            span(
                    node,
                    "rate_at_low_speed",
                    "Lpha",
                    new Span(
                            reach.flowsM3ps().low() / slowest, reach.flowsM3ps().high() / slowest),
                    TradeUnits.LPHA_M,
                    RATE_LPHA);
            span(
                    node,
                    "rate_at_high_speed",
                    "Lpha",
                    new Span(
                            reach.flowsM3ps().low() / fastest, reach.flowsM3ps().high() / fastest),
                    TradeUnits.LPHA_M,
                    RATE_LPHA);
        }
    }

    private static void steps(ArrayNode array, @Nullable Cover cover) {
        if (cover == null) {
            return;
        }
        for (Cover.Step step : cover.steps()) {
            ObjectNode node = array.addObject();
            node.put("set", step.set());
            node.set("size_Lpm", Json.number(step.sizeM3ps() / TradeUnits.LPM_M3PS, FLOW_LPM));
            span(node, "flow", "Lpm", step.usedM3ps(), TradeUnits.LPM_M3PS, FLOW_LPM);
            span(node, "pressure", "kPa", step.pressuresPa(), TradeUnits.KPA_PA, PRESSURE_KPA);
        }
    }

    private static void changeovers(ArrayNode array, @Nullable Cover cover, Job job) {
        if (cover == null) {
            return;
        }
        for (Cover.Changeover change : cover.changeovers()) {
            ObjectNode node = array.addObject();
            node.put("new_set", change.newSet());
            node.set("flow_Lpm", Json.number(change.flowM3ps() / TradeUnits.LPM_M3PS, FLOW_LPM));
            span(node, "overlap", "Lpm", change.overlapM3ps(), TradeUnits.LPM_M3PS, FLOW_LPM);
            node.set(
                    "rate_at_low_speed_Lpha",
                    rate(change.rateM(job, job.speedsMps().low())));
            node.set(
                    "rate_at_high_speed_Lpha",
                    rate(change.rateM(job, job.speedsMps().high())));
            node.set(
                    "speed_at_low_rate_mps",
                    Json.number(change.speedMps(job, job.ratesM().low()), SPEED_MPS));
            node.set(
                    "speed_at_high_rate_mps",
                    Json.number(change.speedMps(job, job.ratesM().high()), SPEED_MPS));
        }
    }

    private static JsonNode rate(@Nullable Double rateM) {
        return Json.number(rateM == null ? null : rateM / TradeUnits.LPHA_M, RATE_LPHA);
    }

    private static void corners(ArrayNode array, Candidate candidate) {
        for (Corner corner : candidate.corners()) {
            ObjectNode node = array.addObject();
            node.set("rate_Lpha", rate(corner.rateM()));
            node.set("speed_mps", Json.number(corner.speedMps(), SPEED_MPS));
            node.set("outlet_Lpm", Json.number(corner.outletM3ps() / TradeUnits.LPM_M3PS, FLOW_LPM));
            node.set("boom_Lpm", Json.number(corner.boomM3ps() / TradeUnits.LPM_M3PS, FLOW_LPM));
            Cover.Step step = corner.step();
            Double pressurePa = corner.pressurePa();
            node.set("size_Lpm", Json.number(step == null ? null : step.sizeM3ps() / TradeUnits.LPM_M3PS, FLOW_LPM));
            node.set("pressure_kPa", Json.number(pressurePa == null ? null : pressurePa / 1000, PRESSURE_KPA));
        }
    }

    private static void evenness(ObjectNode parent, @Nullable Evenness evenness) {
        if (evenness == null) {
            parent.putNull("height");
            return;
        }
        ObjectNode node = parent.putObject("height");
        HeightWindow window = evenness.window();
        node.set("window_low_m", Json.number(window == null ? null : window.lowM(), LENGTH_M));
        node.set("window_high_m", Json.number(window == null ? null : window.highM(), LENGTH_M));
        node.set("row_cv_at_set_height", Json.number(evenness.cvAtSetHeight(), RATIO));
        node.set("row_cv_expected", Json.number(evenness.expectedCv(), RATIO));
        node.set("within_limit_share", Json.number(evenness.withinShare(), RATIO));
        ArrayNode curve = node.putArray("curve");
        for (Evenness.AtHeight at : evenness.curve()) {
            ObjectNode point = curve.addObject();
            point.set("height_m", Json.number(at.heightM(), LENGTH_M));
            point.set("row_cv", Json.number(at.rowCv(), RATIO));
        }
    }
}
