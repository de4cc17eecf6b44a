package evenfall.bench.pattern;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.report.Json;
import evenfall.pattern.LineMeasures;
import evenfall.pattern.RowMeasures;
import evenfall.pattern.StaticPattern;
import org.jspecify.annotations.Nullable;

/**
 * The answer of {@code pattern --json}. Ratios, not percent; a measure that is not defined is null, and {@code why} beside it says
 * the reason, as in the monitor's live messages.
 */
public final class PatternJson {
    private static final int DECIMALS = 6;

    private PatternJson() {}

    public static ObjectNode of(PatternStudy study) {
        ObjectNode root = Json.object();
        root.put("outlet", study.type().id());
        root.put("outside_window", study.outsideWindow());
        ArrayNode cases = root.putArray("cases");
        for (StaticPattern one : study.cases()) {
            cases.add(oneCase(one));
        }
        return root;
    }

    /** Why a measure is null; null where none is. */
    private static @Nullable String why(StaticPattern one) {
        if (one.rowMeasures() == null) {
            return "the boom is too short: every row lies so near an end that outlets are missing there";
        }
        return one.lineMeasures() == null
                ? "fewer than two lines fall so far inside that no end of the boom matters"
                : null;
    }

    private static ObjectNode oneCase(StaticPattern one) {
        RowMeasures rows = one.rowMeasures();
        LineMeasures lines = one.lineMeasures();
        ObjectNode node = Json.object();
        node.set("height_m", Json.number(one.heightM(), DECIMALS));
        node.set("row_cv", Json.number(rows == null ? null : rows.rowCv(), DECIMALS));
        node.set("least_row", Json.number(rows == null ? null : rows.leastRow(), DECIMALS));
        node.set("most_row", Json.number(rows == null ? null : rows.mostRow(), DECIMALS));
        node.set("below_80_share", Json.number(rows == null ? null : rows.below80Share(), DECIMALS));
        node.set("above_120_share", Json.number(rows == null ? null : rows.above120Share(), DECIMALS));
        node.set("widest_gap_m", Json.number(lines == null ? null : lines.widestGapM(), DECIMALS));
        node.set("doubled_share", Json.number(lines == null ? null : lines.doubledShare(), DECIMALS));
        String why = why(one);
        if (why != null) {
            node.put("why", why);
        }
        ArrayNode landing = node.putArray("lines");
        for (StaticPattern.Line line : one.lines()) {
            ObjectNode at = landing.addObject();
            at.set("right_m", Json.number(line.rightM(), DECIMALS));
            at.set("back_m", Json.number(line.backM(), DECIMALS));
            at.set("share", Json.number(line.share(), DECIMALS));
        }
        ArrayNode fed = node.putArray("rows");
        for (StaticPattern.Row row : one.rows()) {
            ObjectNode at = fed.addObject();
            at.set("at_m", Json.number(row.atM(), DECIMALS));
            at.set("share", Json.number(row.share(), DECIMALS));
        }
        return node;
    }
}
