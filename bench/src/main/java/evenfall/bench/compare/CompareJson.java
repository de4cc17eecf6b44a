package evenfall.bench.compare;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.report.Json;
import evenfall.bench.run.RunJson;
import evenfall.bench.run.RunResult;
import evenfall.bench.score.GroundShare;

/** The answer of {@code compare --json}: for each type what {@code run --json} gives, and what the ground got. */
public final class CompareJson {
    private CompareJson() {}

    public static ObjectNode of(Comparison comparison) {
        ObjectNode root = Json.object();
        RunResult first = comparison.results().get(0);
        root.put("scenario", first.scenario());
        root.put("seed", first.seed());
        root.set("seconds", Json.number(first.seconds(), 3));
        ArrayNode outlets = root.putArray("outlets");
        for (RunResult result : comparison.results()) {
            ObjectNode node = outlets.addObject();
            node.put("outlet", result.outlet());
            ObjectNode run = RunJson.of(result);
            node.set("truth", run.get("truth"));
            node.set("reported", run.get("reported"));
            node.set("score", run.get("score"));
            GroundShare ground = result.score().ground();
            ObjectNode cells = node.putObject("ground");
            cells.set("below_80_share", Json.number(ground.below80Share(), 5));
            cells.set("above_120_share", Json.number(ground.above120Share(), 5));
            ArrayNode rowCv = cells.putArray("row_cv_by_2_m");
            for (double cv : ground.rowCvByCell()) {
                rowCv.add(Json.number(cv, 4));
            }
        }
        return root;
    }
}
