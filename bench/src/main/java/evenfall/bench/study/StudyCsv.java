package evenfall.bench.study;

import evenfall.quantity.FixedDecimals;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A study as comma-separated values (RFC 4180), in the order of its grid; what is not known is empty. */
public final class StudyCsv {
    private static final String HEAD =
            "ground,outlet,speed_kmh,height_m,seed,row_cv_mean,row_cv_p95,below_80_share,above_120_share,"
                    + "rate_error_p95_abs_pct,said_row_cv_mean,alerts_raised,alerts_missed,alerts_false\r\n";

    private StudyCsv() {}

    public static String text(Grid grid, Map<Case, Outcome> outcomes) {
        StringBuilder text = new StringBuilder(HEAD);
        for (Case one : grid.cases()) {
            Outcome outcome = outcomes.get(one);
            if (outcome == null) {
                continue;
            }
            text.append(one.ground())
                    .append(',')
                    .append(quoted(one.outlet()))
                    .append(',')
                    .append(FixedDecimals.text(one.speedKmh(), 3))
                    .append(',')
                    .append(FixedDecimals.text(one.heightM(), 3))
                    .append(',')
                    .append(one.seed());
            number(text, outcome.rowCvMean());
            number(text, outcome.rowCvP95());
            number(text, outcome.below80Share());
            number(text, outcome.above120Share());
            number(text, outcome.rateErrorP95AbsPct());
            number(text, outcome.saidRowCvMean());
            text.append(',')
                    .append(outcome.raised())
                    .append(',')
                    .append(outcome.missed())
                    .append(',')
                    .append(outcome.unfounded())
                    .append("\r\n");
        }
        return text.toString();
    }

    private static String quoted(String text) {
        return text.contains(",") || text.contains("\"") ? '"' + text.replace("\"", "\"\"") + '"' : text;
    }

    private static void number(StringBuilder text, @Nullable Double value) {
        text.append(',');
        if (value != null) {
            FixedDecimals.append(text, value, 6);
        }
    }
}
