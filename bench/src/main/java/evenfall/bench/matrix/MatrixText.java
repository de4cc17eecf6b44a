package evenfall.bench.matrix;

import evenfall.bench.report.Paint;
import evenfall.bench.report.TextTable;
import evenfall.bench.score.Senses;
import evenfall.quantity.FixedDecimals;
import evenfall.quantity.Units;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The matrix for people. */
public final class MatrixText {
    private static final String NONE = "-";
    private static final int COLUMNS = 90;

    private final Paint paint;

    public MatrixText(Paint paint) {
        this.paint = paint;
    }

    /** Everything that was run, and the limits. */
    public List<String> lines(Matrix matrix) {
        List<String> lines = new ArrayList<>();
        section(lines, head(matrix), groups(matrix));
        if (!matrix.alone().isEmpty()) {
            section(
                    lines,
                    "faults, each alone on an invented machine; delays from when it shows",
                    faults(matrix.alone(), true));
        }
        if (!matrix.company().isEmpty()) {
            section(lines, "faults of the scenarios, in company", faults(matrix.company(), false));
        }
        if (!matrix.events().isEmpty()) {
            section(lines, "alerts by kind, due by the truth or by a fault", events(matrix));
        }
        if (matrix.scenarios().iterator().hasNext()) {
            section(lines, "scenarios; how far the monitor was off, p95", cells(matrix.scenarios(), "scenario"));
        }
        if (matrix.grounds().iterator().hasNext()) {
            section(
                    lines,
                    "ground with nothing wrong; how far the monitor was off, p95",
                    cells(matrix.grounds(), "class"));
        }
        if (!matrix.senses().isEmpty()) {
            section(lines, "senses: said less true, in runs without a fault", senses(matrix));
        }
        section(lines, "limits", limits(Limit.of(matrix)));
        return lines;
    }

    /** One line a scenario, for a page about them. */
    public List<String> scenarios(Matrix matrix) {
        TextTable table = new TextTable(
                paint,
                2,
                "scenario",
                "outlets",
                "true CV %",
                "p95",
                "said CV %",
                "p95",
                "raised",
                "right",
                "missed",
                "misled",
                "false");
        for (Cell cell : matrix.scenarios()) {
            Tally tally = cell.tally();
            table.row(
                    cell.name(),
                    cell.outlet(),
                    percent(cell.trueRowCvMean()),
                    percent(cell.trueRowCvP95()),
                    percent(cell.saidRowCvMean()),
                    percent(cell.saidRowCvP95()),
                    Long.toString(tally.raised()),
                    Long.toString(tally.right()),
                    bad(tally.missed()),
                    Long.toString(tally.misled()),
                    bad(tally.unfounded()));
        }
        List<String> lines = new ArrayList<>();
        section(lines, head(matrix), table.lines());
        return lines;
    }

    private void section(List<String> lines, String title, List<String> table) {
        if (!lines.isEmpty()) {
            lines.add("");
        }
        lines.add(paint.strong(title));
        lines.addAll(table);
    }

    private static String head(Matrix matrix) {
        List<Long> seeds = matrix.wanted().seeds();
        String text = matrix.runs() + " runs, " + FixedDecimals.text(matrix.hours(), 1) + " hours in the field, ";
        if (seeds.isEmpty()) {
            return text + "each scenario's own seed";
        }
        return seeds.size() == 1
                ? text + "seed " + seeds.get(0)
                : text + "seeds " + seeds.get(0) + " to " + seeds.get(seeds.size() - 1);
    }

    private List<String> groups(Matrix matrix) {
        TextTable table = new TextTable(
                paint, 1, "", "runs", "hours", "raised", "right", "missed", "misled", "near miss", "false", "false/h");
        matrix.groups()
                .forEach((group, tally) -> table.row(
                        group.words(),
                        Integer.toString(tally.runs()),
                        FixedDecimals.text(tally.hours(), 1),
                        Long.toString(tally.raised()),
                        Long.toString(tally.right()),
                        bad(tally.missed()),
                        Long.toString(tally.misled()),
                        Long.toString(tally.nearMisses()),
                        bad(tally.unfounded()),
                        FixedDecimals.text(tally.unfoundedPerHour(), 2)));
        return table.lines();
    }

    private List<String> faults(Map<String, FaultRow> rows, boolean alone) {
        TextTable table = new TextTable(
                paint,
                1,
                "fault",
                "times",
                "due",
                "in time",
                "late",
                "never",
                "delay s",
                "p95",
                "within",
                "unasked",
                alone ? "false/h" : "");
        rows.forEach((name, row) -> table.row(
                name,
                Integer.toString(row.times()),
                row.due() == 0 ? NONE : Integer.toString(row.due()),
                share(row),
                count(row.late(), row.due()),
                count(row.missed(), row.due()),
                number(row.delaysS().percentile(0.5), 1),
                number(row.delaysS().p95(), 1),
                number(row.withinS(), 1),
                Integer.toString(row.unasked()),
                alone ? FixedDecimals.text(row.tally().unfoundedPerHour(), 1) : ""));
        return table.lines();
    }

    private String share(FaultRow row) {
        Double share = row.share();
        if (share == null) {
            return NONE;
        }
        String text = Units.percent(share);
        return share >= 0.95 ? paint.good(text) : paint.bad(text);
    }

    private List<String> events(Matrix matrix) {
        TextTable table = new TextTable(
                paint,
                1,
                "alert",
                "due",
                "in time",
                "missed",
                "blinded",
                "misled",
                "delay s",
                "p95",
                "near miss",
                "false",
                "false/h");
        List<String> more = new ArrayList<>();
        double hours = matrix.hours();
        matrix.events().forEach((kind, row) -> {
            table.row(
                    kind,
                    Integer.toString(row.due()),
                    row.due() == 0 ? NONE : Units.percent((double) row.inTime() / row.due()),
                    bad(row.missed()),
                    Integer.toString(row.blinded()),
                    Integer.toString(row.misled()),
                    number(row.delaysS().percentile(0.5), 1),
                    number(row.delaysS().p95(), 1),
                    Integer.toString(row.nearMisses()),
                    bad(row.unfounded()),
                    FixedDecimals.text(row.unfounded() / hours, 2));
            if (row.causeJudged() > 0) {
                more.add("  " + kind + ": the right cause in " + row.causeRight() + " of " + row.causeJudged());
            }
            if (row.leadsS().count() > 0) {
                more.add("  " + kind + ": lead " + number(row.leadsS().percentile(0.5), 1) + " s in the median, "
                        + number(row.leadsS().percentile(0.05), 1) + " s in the worst twentieth");
            }
            if (row.tooQuick() > 0) {
                more.add("  " + kind + ": " + row.tooQuick() + " more contacts came too quickly to warn of");
            }
        });
        List<String> lines = new ArrayList<>(table.lines());
        lines.addAll(more);
        return lines;
    }

    private List<String> cells(Iterable<Cell> cells, String what) {
        TextTable table = new TextTable(
                paint,
                2,
                what,
                "outlets",
                "row CV",
                "rate error",
                "raised",
                "right",
                "missed",
                "misled",
                "false",
                "false/h");
        for (Cell cell : cells) {
            Tally tally = cell.tally();
            table.row(
                    cell.name(),
                    cell.outlet(),
                    number(cell.rowCvPoints().p95(), 1),
                    number(cell.rateErrorPoints().p95(), 1),
                    Long.toString(tally.raised()),
                    Long.toString(tally.right()),
                    bad(tally.missed()),
                    Long.toString(tally.misled()),
                    bad(tally.unfounded()),
                    FixedDecimals.text(tally.unfoundedPerHour(), 1));
        }
        return table.lines();
    }

    private List<String> senses(Matrix matrix) {
        Set<String> quantities = new LinkedHashSet<>();
        List<String> head = new ArrayList<>();
        head.add("quantity");
        matrix.senses().forEach((ground, senses) -> {
            quantities.addAll(senses.spreads().keySet());
            head.add(ground + ": bias");
            head.add("p95");
        });
        TextTable table = new TextTable(paint, 1, head.toArray(new String[0]));
        for (String quantity : quantities) {
            List<String> row = new ArrayList<>();
            row.add(quantity);
            for (Senses senses : matrix.senses().values()) {
                Double bias = senses.of(quantity).mean();
                row.add(bias == null ? NONE : Units.signed(bias, 3));
                row.add(number(senses.of(quantity).p95(), 3));
            }
            table.row(row.toArray(new String[0]));
        }
        return table.lines();
    }

    private List<String> limits(List<Limit> limits) {
        TextTable table = new TextTable(paint, 1, "", "to reach", "measured", "");
        for (Limit limit : limits) {
            table.row(
                    limit.what(),
                    (limit.atLeast() ? "at least " : "at most ") + amount(limit.toReach(), limit.unit()),
                    limit.measured() == null ? NONE : amount(limit.measured(), limit.unit()),
                    verdict(limit.reached()));
        }
        List<String> lines = new ArrayList<>(table.lines());
        for (Limit limit : limits) {
            if (Boolean.FALSE.equals(limit.reached()) && !limit.failing().isEmpty()) {
                lines.add("  not reached, " + limit.what() + ":");
                lines.addAll(wrapped(limit.failing()));
            }
        }
        return lines;
    }

    /** Words with commas, in lines of a readable width. */
    private static List<String> wrapped(List<String> words) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder("   ");
        for (int i = 0; i < words.size(); i++) {
            String word = words.get(i) + (i + 1 < words.size() ? "," : "");
            if (line.length() + word.length() >= COLUMNS) {
                lines.add(line.toString());
                line = new StringBuilder("   ");
            }
            line.append(' ').append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    private String verdict(@Nullable Boolean reached) {
        if (reached == null) {
            return paint.faint("not measured");
        }
        return reached ? paint.good("reached") : paint.bad("not reached");
    }

    private static String amount(double value, String unit) {
        String text = FixedDecimals.text(value, unit.isEmpty() || unit.equals("%") ? 0 : 2);
        return unit.isEmpty() ? text : text + " " + unit;
    }

    private String bad(long count) {
        return count == 0 ? "0" : paint.bad(Long.toString(count));
    }

    private static String count(int count, int due) {
        return due == 0 ? NONE : Integer.toString(count);
    }

    private static String number(@Nullable Double value, int decimals) {
        return value == null ? NONE : FixedDecimals.text(value, decimals);
    }

    private static String percent(@Nullable Double ratio) {
        return ratio == null ? NONE : FixedDecimals.text(100 * ratio, 1);
    }
}
