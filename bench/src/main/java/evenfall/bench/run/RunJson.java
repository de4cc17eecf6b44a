package evenfall.bench.run;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.report.Json;
import evenfall.bench.score.Figures;
import evenfall.bench.score.Score;
import evenfall.bench.score.ScoredAlert;

/** The answer of {@code run --json}. */
public final class RunJson {
    private RunJson() {}

    public static ObjectNode of(RunResult result) {
        ObjectNode root = Json.object();
        root.put("scenario", result.scenario());
        root.put("seed", result.seed());
        root.set("seconds", Json.number(result.seconds(), 3));
        root.put("outlet", result.outlet());
        Score score = result.score();
        root.set("truth", figures(score.truth()));
        root.set("reported", figures(score.reported()));
        ObjectNode marks = root.putObject("score");
        marks.set("rate_error_points_p95", Json.number(score.rateErrorPointsP95(), 3));
        marks.set("row_cv_points_p95", Json.number(score.rowCvPointsP95(), 3));
        ArrayNode alerts = marks.putArray("alerts");
        for (ScoredAlert alert : score.alerts()) {
            ObjectNode node = alerts.addObject();
            node.put("kind", alert.kind());
            node.put("place", alert.place());
            node.set("due_s", Json.number(alert.dueS(), 3));
            node.set("raised_s", Json.number(alert.raisedS(), 3));
            node.set("cleared_s", Json.number(alert.clearedS(), 3));
        }
        marks.put("missed", score.missed());
        marks.put("false", score.falseAlerts());
        return root;
    }

    private static ObjectNode figures(Figures figures) {
        ObjectNode node = Json.object();
        ObjectNode rate = node.putObject("rate_error_pct");
        rate.set("mean", Json.number(figures.rateErrorMeanPct(), 3));
        rate.set("p95_abs", Json.number(figures.rateErrorP95AbsPct(), 3));
        ObjectNode rows = node.putObject("row_cv");
        rows.set("mean", Json.number(figures.rowCvMean(), 5));
        rows.set("p95", Json.number(figures.rowCvP95(), 5));
        return node;
    }
}
