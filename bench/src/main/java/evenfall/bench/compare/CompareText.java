package evenfall.bench.compare;

import evenfall.bench.report.Paint;
import evenfall.bench.report.TextTable;
import evenfall.bench.run.RunResult;
import evenfall.bench.score.GroundShare;
import evenfall.bench.score.Score;
import evenfall.quantity.FixedDecimals;
import evenfall.quantity.Units;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The answer of {@code compare} for people: a table, and for each type a strip of how even each stretch of ground is. */
public final class CompareText {
    private static final String EIGHTHS = "▁▂▃▄▅▆▇█";

    /** Row CV at which a strip's bar is full. */
    private static final double FULL_CV = 0.4;

    private static final double LIMIT_CV = 0.15;

    private final Paint paint;
    private final int columns;

    public CompareText(Paint paint, int columns) {
        this.paint = paint;
        this.columns = columns;
    }

    public List<String> lines(Comparison comparison) {
        RunResult first = comparison.results().get(0);
        List<String> lines = new ArrayList<>();
        lines.add(paint.strong(first.title()) + ": " + FixedDecimals.text(first.seconds(), 0)
                + " s over the same ground, seed " + first.seed());
        lines.add("");
        TextTable table = new TextTable(
                paint, 1, "outlet", "CV %", "p95", "said %", "p95", "<80 %", ">120 %", "rate %", "alerts", "missed",
                "false");
        for (RunResult result : comparison.results()) {
            Score score = result.score();
            GroundShare ground = score.ground();
            table.row(
                    result.outlet(),
                    percent(score.truth().rowCvMean()),
                    percent(score.truth().rowCvP95()),
                    percent(score.reported().rowCvMean()),
                    percent(score.reported().rowCvP95()),
                    percent(ground.below80Share()),
                    percent(ground.above120Share()),
                    score.truth().rateErrorP95AbsPct() == null
                            ? "-"
                            : FixedDecimals.text(score.truth().rateErrorP95AbsPct(), 1),
                    Integer.toString(score.raised()),
                    counted(score.missed()),
                    counted(score.falseAlerts()));
        }
        lines.addAll(table.lines());
        lines.add(paint.faint("  CV: true row CV, mean and p95; said: the same by the monitor; rate: p95 of the"));
        lines.add(paint.faint("  true rate error; <80, >120: cells of ground that got so much of the mean"));
        lines.add("");
        lines.add(paint.faint("  row CV along the pass, a full bar is " + Units.percent(FULL_CV) + " or more"));
        for (RunResult result : comparison.results()) {
            lines.add(
                    "  " + pad(result.outlet()) + strip(result.score().ground().rowCvByCell()));
        }
        return lines;
    }

    private String counted(int count) {
        return count == 0 ? "0" : paint.bad(Integer.toString(count));
    }

    private static String percent(@Nullable Double ratio) {
        return ratio == null ? "-" : Units.percentNumber(ratio, 1);
    }

    private static String pad(String name) {
        return name + " ".repeat(Math.max(1, 14 - name.length()));
    }

    private String strip(List<Double> rowCv) {
        int room = Math.min(rowCv.size(), Math.max(10, columns - 18));
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < room; i++) {
            double worst = 0;
            for (double cv : rowCv.subList(i * rowCv.size() / room, (i + 1) * rowCv.size() / room)) {
                worst = Math.max(worst, cv);
            }
            int eighth = (int) Math.min(EIGHTHS.length() - 1, Math.floor(worst / FULL_CV * EIGHTHS.length()));
            String bar = String.valueOf(EIGHTHS.charAt(eighth));
            text.append(worst > LIMIT_CV ? paint.high(bar) : bar);
        }
        return text.toString();
    }
}
