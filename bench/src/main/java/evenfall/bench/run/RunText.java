package evenfall.bench.run;

import evenfall.bench.received.ReportedAlert;
import evenfall.bench.received.ReportedMoment;
import evenfall.bench.received.WireTally;
import evenfall.bench.report.Counted;
import evenfall.bench.report.Paint;
import evenfall.bench.report.TextTable;
import evenfall.bench.score.Figures;
import evenfall.bench.score.Score;
import evenfall.bench.score.ScoredAlert;
import evenfall.quantity.FixedDecimals;
import evenfall.quantity.Units;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The result of a run for people: the truth beside what the monitor said. */
public final class RunText {
    private static final int MOST_TOLD = 4;

    private final Paint paint;

    public RunText(Paint paint) {
        this.paint = paint;
    }

    public List<String> lines(RunResult result) {
        List<String> lines = new ArrayList<>();
        Score score = result.score();
        lines.add(paint.strong(result.title()) + ": " + FixedDecimals.text(result.seconds(), 0) + " s with "
                + result.outlet() + ", seed " + result.seed());
        lines.add("");
        lines.addAll(figures(score));
        lines.add("");
        lines.addAll(alerts(score.alerts()));
        lines.add("  " + verdict(score));
        lines.add("");
        lines.add(paint.faint("  wire: " + wire(result.report().wire())));
        lines.add(paint.faint("  time: " + times(result)));
        for (String remark : result.remarks()) {
            lines.add("  " + paint.high("note: ") + remark);
        }
        return lines;
    }

    private List<String> figures(Score score) {
        Figures truth = score.truth();
        Figures reported = score.reported();
        TextTable table = new TextTable(paint, 1, "", "truth", "monitor", "apart, p95");
        table.row(
                "rate error, mean %",
                signed(truth.rateErrorMeanPct()),
                signed(reported.rateErrorMeanPct()),
                points(score.rateErrorPointsP95()));
        table.row(
                "rate error, p95 %",
                number(truth.rateErrorP95AbsPct(), 1), number(reported.rateErrorP95AbsPct(), 1), "");
        table.row(
                "row CV, mean %",
                number(truth.rowCvMean(), 100), number(reported.rowCvMean(), 100), points(score.rowCvPointsP95()));
        table.row("row CV, p95 %", number(truth.rowCvP95(), 100), number(reported.rowCvP95(), 100), "");
        return table.lines();
    }

    private List<String> alerts(List<ScoredAlert> alerts) {
        if (alerts.isEmpty()) {
            return List.of("  no alert was due, and none was raised", "");
        }
        TextTable table = new TextTable(paint, 2, "alert", "", "due s", "raised s", "cleared s", "delay s");
        for (ScoredAlert alert : alerts) {
            table.row(
                    alert.kind() + " " + alert.place(),
                    word(alert.verdict()),
                    number(alert.dueS(), 1),
                    number(alert.raisedS(), 1),
                    number(alert.clearedS(), 1),
                    delay(alert.delayS()));
        }
        List<String> lines = new ArrayList<>(table.lines());
        lines.addAll(words(alerts));
        return lines;
    }

    /** What the driver read, once for each kind and place. */
    private List<String> words(List<ScoredAlert> alerts) {
        List<String> lines = new ArrayList<>();
        Set<String> told = new LinkedHashSet<>();
        for (ScoredAlert alert : alerts) {
            ReportedAlert said = alert.raised();
            if (said != null && told.size() < MOST_TOLD && told.add(said.kind() + " " + said.place())) {
                lines.add("");
                lines.add("  at " + FixedDecimals.text(said.raisedS(), 1) + " s the driver read");
                lines.add("    " + said.why());
                lines.add("    " + paint.strong("→ " + said.act()));
            }
        }
        lines.add("");
        return lines;
    }

    /** An alert that rose long before this one was due stands from an earlier time. */
    private static String delay(@Nullable Double delayS) {
        return delayS != null && delayS < -1 ? "stood" : signed(delayS);
    }

    private String word(ScoredAlert.Verdict verdict) {
        return switch (verdict) {
            case RIGHT -> paint.good("true");
            case MISSED -> paint.bad("missed");
            case BLINDED -> paint.faint("no sensor");
            case TOO_QUICK -> paint.faint("too quick");
            case FALSE -> paint.bad("false");
            case MISLED -> paint.faint("misled");
            case NEAR_MISS -> paint.high("near miss");
        };
    }

    private String verdict(Score score) {
        String text = "missed " + score.missed() + ", false " + score.falseAlerts();
        return score.missed() + score.falseAlerts() == 0 ? paint.good(text) : paint.bad(text);
    }

    private static String wire(WireTally wire) {
        return Counted.text(wire.sentences(), "sentence") + ", " + wire.accepted() + " accepted, " + wire.ignored()
                + " ignored, " + wire.rejected() + " rejected";
    }

    private static String times(RunResult result) {
        List<String> parts = new ArrayList<>();
        for (RunResult.Time time : result.times()) {
            parts.add(time.what() + " " + FixedDecimals.text(time.seconds(), 1) + " s");
        }
        Double worst = worstBehindS(result.report().moments());
        if (result.pace() == Pace.REAL && worst != null) {
            parts.add("slowest live message " + FixedDecimals.text(1000 * worst, 0) + " ms behind the quickest");
        }
        return String.join(", ", parts);
    }

    private static @Nullable Double worstBehindS(List<ReportedMoment> moments) {
        Double worst = null;
        for (ReportedMoment moment : moments) {
            double behindS = moment.arrivalS() - moment.atS();
            worst = worst == null ? behindS : Math.max(worst, behindS);
        }
        return worst;
    }

    private static String points(@Nullable Double points) {
        return points == null ? "-" : FixedDecimals.text(points, 1) + " points";
    }

    private static String number(@Nullable Double value, double times) {
        return value == null ? "-" : FixedDecimals.text(value * times, 1);
    }

    private static String signed(@Nullable Double value) {
        return value == null ? "-" : Units.signed(value, 1);
    }
}
