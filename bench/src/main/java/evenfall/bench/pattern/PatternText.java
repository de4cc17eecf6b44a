package evenfall.bench.pattern;

import evenfall.bench.report.Paint;
import evenfall.bench.report.RowBars;
import evenfall.bench.report.TextTable;
import evenfall.pattern.HeightWindow;
import evenfall.pattern.LineMeasures;
import evenfall.pattern.RowMeasures;
import evenfall.pattern.StaticPattern;
import evenfall.quantity.FixedDecimals;
import evenfall.quantity.Units;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The answer of {@code pattern} for people: a table of heights, bars of rows, and the heights that hold. */
public final class PatternText {
    private static final int BAR_WIDTH = 3;
    private static final int PICTURE_LINES = 6;

    private final Units units;
    private final Paint paint;
    private final int columns;

    /**
     * @param columns characters a line may have
     */
    public PatternText(Units units, Paint paint, int columns) {
        this.units = units;
        this.paint = paint;
        this.columns = columns;
    }

    public List<String> lines(PatternStudy study) {
        List<String> lines = new ArrayList<>();
        lines.add(paint.strong(study.type().title()) + " at " + units.pressure(study.pressurePa()) + ", SG "
                + FixedDecimals.text(study.specificGravity(), 2) + ": "
                + outlets(study.layout()) + ", rows every "
                + units.spacing(study.layout().rowM()));
        lines.add("");
        lines.addAll(table(study));
        lines.add("");
        for (StaticPattern one : study.cases()) {
            lines.addAll(picture(study, one));
        }
        lines.addAll(windows(study));
        return lines;
    }

    private String outlets(StaticPattern.Layout layout) {
        return layout.outlets() == 1
                ? "1 outlet"
                : layout.outlets() + " outlets every " + units.spacing(layout.spacingM());
    }

    private List<String> table(PatternStudy study) {
        TextTable table = new TextTable(
                paint,
                0,
                "height " + units.lengthUnit(),
                "row CV %",
                "groove CV %",
                "least row %",
                "most row %",
                "rows <80 %",
                "rows >120 %",
                "widest gap " + units.lengthUnit(),
                "doubled %");
        for (StaticPattern one : study.cases()) {
            RowMeasures rows = one.rowMeasures();
            LineMeasures gaps = one.lineMeasures();
            table.row(
                    units.lengthNumber(one.heightM()),
                    judged(rows),
                    percent(one.grooveCv()),
                    percent(rows == null ? null : rows.leastRow()),
                    percent(rows == null ? null : rows.mostRow()),
                    percent(rows == null ? null : rows.below80Share()),
                    percent(rows == null ? null : rows.above120Share()),
                    gaps == null ? "-" : units.lengthNumber(gaps.widestGapM()),
                    percent(gaps == null ? null : gaps.doubledShare()));
        }
        List<String> lines = new ArrayList<>(table.lines());
        lines.add(paint.faint("  row CV: what crop rows get. groove CV: the broadcast measure over 100 mm grooves,"
                + " high by nature where streams fall in lines."));
        return lines;
    }

    private String judged(@Nullable RowMeasures rows) {
        if (rows == null) {
            return "-";
        }
        String text = Units.percentNumber(rows.rowCv(), 1);
        return rows.rowCv() <= PatternStudy.EVEN_ENOUGH_CV ? paint.good(text) : paint.bad(text);
    }

    private static String percent(@Nullable Double ratio) {
        return ratio == null ? "-" : Units.percentNumber(ratio, 0);
    }

    private List<String> picture(PatternStudy study, StaticPattern one) {
        List<String> lines = new ArrayList<>();
        RowMeasures measures = one.rowMeasures();
        if (measures == null) {
            lines.add("  at " + units.length(one.heightM())
                    + ": the boom is too short to measure. Every row lies so near an end that outlets are missing there;"
                    + " take more outlets (--count)");
            lines.add("");
            return lines;
        }
        List<StaticPattern.Row> shown = middle(one.rows(), Math.max(8, (columns - 10) / BAR_WIDTH));
        List<Double> shares = new ArrayList<>();
        for (StaticPattern.Row row : shown) {
            shares.add(row.share());
        }
        lines.add("  at " + paint.strong(units.length(one.heightM())) + ": " + verdict(measures)
                + paint.faint("   " + shown.size() + " of " + one.rows().size() + " rows, share of the mean"));
        lines.addAll(RowBars.picture(shares, BAR_WIDTH, PICTURE_LINES, paint));
        lines.add(paint.faint(outlets(study.layout(), shown)));
        lines.add("");
        return lines;
    }

    private String verdict(RowMeasures rows) {
        if (rows.rowCv() <= PatternStudy.EVEN_ENOUGH_CV) {
            return paint.good("even") + ", row CV " + Units.percent(rows.rowCv());
        }
        return paint.bad("uneven") + ", row CV " + Units.percent(rows.rowCv()) + ", the rows get from "
                + Units.percentNumber(rows.leastRow(), 0) + " to " + Units.percent(rows.mostRow());
    }

    private static List<StaticPattern.Row> middle(List<StaticPattern.Row> rows, int atMost) {
        int spare = Math.max(0, rows.size() - Math.min(atMost, 32));
        return rows.subList(spare / 2, rows.size() - (spare - spare / 2));
    }

    /** A line with a mark under the rows above which an outlet hangs. */
    private static String outlets(StaticPattern.Layout layout, List<StaticPattern.Row> shown) {
        double firstM = shown.get(0).atM();
        char[] line = " ".repeat(shown.size() * BAR_WIDTH).toCharArray();
        for (int outlet = 0; outlet < layout.outlets(); outlet++) {
            double inRows = (layout.outletRightM(outlet) - firstM) / layout.rowM();
            int column = (int) Math.round(inRows * BAR_WIDTH);
            if (column >= 0 && column < line.length) {
                line[column] = '▲';
            }
        }
        return "outlets " + new String(line).stripTrailing();
    }

    private List<String> windows(PatternStudy study) {
        String limit = "row CV of at most " + Units.percent(PatternStudy.EVEN_ENOUGH_CV);
        List<String> lines = new ArrayList<>();
        List<HeightWindow> windows = study.windows();
        if (windows.isEmpty()) {
            lines.add("  None of these heights, nor " + units.length(0.5) + ", keeps a " + limit
                    + " (mean over eight row phases).");
        }
        for (HeightWindow window : windows) {
            if (window.isOpen()) {
                lines.add("  Any height from the ground to " + units.length(window.highM()) + " keeps a " + limit
                        + " (mean over eight row phases).");
            } else {
                lines.add("  From " + paint.strong(units.length(window.lowM())) + " to "
                        + paint.strong(units.length(window.highM())) + " rows keep a " + limit
                        + " (mean over eight row phases).");
            }
        }
        return lines;
    }
}
