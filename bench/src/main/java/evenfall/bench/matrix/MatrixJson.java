package evenfall.bench.matrix;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.report.Json;
import evenfall.bench.score.Spread;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The answer of {@code score --json}. */
public final class MatrixJson {
    private MatrixJson() {}

    public static ObjectNode of(Matrix matrix) {
        ObjectNode root = Json.object();
        ArrayNode seeds = root.putArray("seeds");
        matrix.wanted().seeds().forEach(seeds::add);
        root.put("runs", matrix.runs());
        root.set("field_hours", Json.number(matrix.hours(), 3));
        ArrayNode groups = root.putArray("groups");
        matrix.groups().forEach((group, tally) -> {
            ObjectNode node = groups.addObject();
            node.put("group", group.name().toLowerCase(Locale.ROOT));
            node.put("runs", tally.runs());
            node.set("hours", Json.number(tally.hours(), 3));
            tally(node, tally);
        });
        ArrayNode faults = root.putArray("faults");
        faults(faults, matrix.alone(), true);
        faults(faults, matrix.company(), false);
        ArrayNode events = root.putArray("events");
        matrix.events().forEach((kind, row) -> event(events.addObject(), kind, row, matrix.hours()));
        cells(root.putArray("scenarios"), matrix.scenarios(), "scenario");
        cells(root.putArray("ground"), matrix.grounds(), "class");
        senses(root.putArray("senses"), matrix);
        limits(root.putArray("limits"), Limit.of(matrix));
        return root;
    }

    private static void tally(ObjectNode node, Tally tally) {
        node.put("raised", tally.raised());
        node.put("right", tally.right());
        node.put("missed", tally.missed());
        node.put("near_miss", tally.nearMisses());
        node.put("too_quick", tally.tooQuick());
        node.put("blinded", tally.blinded());
        node.put("misled", tally.misled());
        node.put("false", tally.unfounded());
        node.set("false_per_hour", Json.number(tally.unfoundedPerHour(), 4));
    }

    private static void faults(ArrayNode list, Map<String, FaultRow> rows, boolean alone) {
        rows.forEach((name, row) -> {
            ObjectNode node = list.addObject();
            node.put("fault", name);
            node.put("alone", alone);
            node.put("times", row.times());
            node.put("due", row.due());
            node.put("in_time", row.inTime());
            node.put("late", row.late());
            node.put("missed", row.missed());
            node.put("raised_unasked", row.unasked());
            node.set("within_s", Json.number(row.withinS(), 3));
            spread(node.putObject("delay_s"), row.delaysS());
            if (alone) {
                node.put("false", row.tally().unfounded());
                node.set("false_per_hour", Json.number(row.tally().unfoundedPerHour(), 4));
            }
        });
    }

    private static void spread(ObjectNode node, Spread spread) {
        node.set("median", Json.number(spread.percentile(0.5), 3));
        node.set("p95", Json.number(spread.p95(), 3));
    }

    private static void event(ObjectNode node, String kind, EventRow row, double hours) {
        node.put("kind", kind);
        node.put("due", row.due());
        node.put("in_time", row.inTime());
        node.put("missed", row.missed());
        node.put("too_quick", row.tooQuick());
        node.put("blinded", row.blinded());
        node.put("misled", row.misled());
        node.put("near_miss", row.nearMisses());
        node.put("false", row.unfounded());
        node.set("false_per_hour", Json.number(row.unfounded() / hours, 4));
        spread(node.putObject("delay_s"), row.delaysS());
        ObjectNode lead = node.putObject("lead_s");
        lead.set("median", Json.number(row.leadsS().percentile(0.5), 3));
        lead.set("p5", Json.number(row.leadsS().percentile(0.05), 3));
        ObjectNode cause = node.putObject("cause");
        cause.put("judged", row.causeJudged());
        cause.put("right", row.causeRight());
    }

    private static void cells(ArrayNode list, Iterable<Cell> cells, String what) {
        for (Cell cell : cells) {
            ObjectNode node = list.addObject();
            node.put(what, cell.name());
            node.put("outlet", cell.outlet());
            if (!what.equals("class")) {
                node.put("class", cell.ground());
            }
            node.put("runs", cell.tally().runs());
            rowCv(node.putObject("truth"), cell.trueRowCvMean(), cell.trueRowCvP95());
            rowCv(node.putObject("reported"), cell.saidRowCvMean(), cell.saidRowCvP95());
            node.set("row_cv_points_p95", Json.number(cell.rowCvPoints().p95(), 3));
            node.set("rate_error_points_p95", Json.number(cell.rateErrorPoints().p95(), 3));
            tally(node, cell.tally());
        }
    }

    private static void rowCv(ObjectNode node, @Nullable Double mean, @Nullable Double p95) {
        ObjectNode rows = node.putObject("row_cv");
        rows.set("mean", Json.number(mean, 5));
        rows.set("p95", Json.number(p95, 5));
    }

    private static void senses(ArrayNode list, Matrix matrix) {
        matrix.senses()
                .forEach((ground, senses) -> senses.spreads().forEach((quantity, spread) -> {
                    int comma = quantity.lastIndexOf(", ");
                    ObjectNode node = list.addObject();
                    node.put("class", ground);
                    node.put("quantity", quantity.substring(0, comma));
                    node.put("unit", quantity.substring(comma + 2));
                    node.set("bias", Json.number(spread.mean(), 5));
                    node.set("p95_abs", Json.number(spread.p95(), 5));
                    node.put("count", spread.count());
                }));
    }

    private static void limits(ArrayNode list, List<Limit> limits) {
        for (Limit limit : limits) {
            ObjectNode node = list.addObject();
            node.put("limit", limit.what());
            node.put("unit", limit.unit());
            node.set(limit.atLeast() ? "at_least" : "at_most", Json.number(limit.toReach(), 3));
            node.set("measured", Json.number(limit.measured(), 3));
            node.put("reached", limit.reached());
            ArrayNode failing = node.putArray("failing");
            limit.failing().forEach(failing::add);
        }
    }
}
