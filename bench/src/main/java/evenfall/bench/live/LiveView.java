package evenfall.bench.live;

import evenfall.bench.received.ReportedAlert;
import evenfall.bench.received.ReportedMoment;
import evenfall.bench.report.Paint;
import evenfall.quantity.FixedDecimals;
import evenfall.quantity.TradeUnits;
import evenfall.quantity.Units;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/** One frame: at most {@link #MOST_LINES} lines that a person takes in at a glance. */
public final class LiveView {
    public static final int MOST_LINES = 10;

    private static final int GAUGE = 17;
    private static final int ROW_BAR = 8;
    private static final int MOST_ALERTS = 2;
    private static final String MARGIN = "  ";

    private final String title;
    private final double lengthS;
    private final double rateLimitPct;
    private final double rowCvLimit;
    private final double walkingMps;
    private final Units units;
    private final Paint paint;
    private final int columns;

    /**
     * @param lengthS of the whole drive, s
     * @param rateLimitPct beyond it the rate is shown as a fault, percent
     * @param rowCvLimit beyond it the rows are shown as a fault, a ratio
     * @param walkingMps slower than this no rows are made, and none are judged, m/s
     */
    public LiveView(
            String title,
            double lengthS,
            double rateLimitPct,
            double rowCvLimit,
            double walkingMps,
            Units units,
            Paint paint,
            int columns) {
        this.title = title;
        this.lengthS = lengthS;
        this.rateLimitPct = rateLimitPct;
        this.rowCvLimit = rowCvLimit;
        this.walkingMps = walkingMps;
        this.units = units;
        this.paint = paint;
        this.columns = columns;
    }

    public List<String> frame(LiveState state, double atS) {
        List<String> lines = new ArrayList<>();
        lines.add(progress(atS));
        ReportedMoment now = state.now();
        if (now == null) {
            lines.add(MARGIN + "waiting for the monitor's first words");
            return lines;
        }
        List<ReportedAlert> standing = state.standing();
        lines.add(cut(MARGIN + rate(now) + MARGIN + rows(now)));
        lines.addAll(boom(now, standing));
        lines.addAll(alerts(standing));
        return lines.subList(0, Math.min(lines.size(), MOST_LINES));
    }

    /** The same in one line of plain text, for logs. */
    public String line(LiveState state, double atS) {
        ReportedMoment now = state.now();
        String time = FixedDecimals.text(atS, 0) + " of " + FixedDecimals.text(lengthS, 0) + " s";
        if (now == null) {
            return time + ": waiting for the monitor's first words";
        }
        StringBuilder text = new StringBuilder(time).append(": rate ").append(rateText(now));
        Double rowCv = now.rowCv();
        text.append(stands(now) ? ", standing" : ", row CV " + (rowCv == null ? "not known" : Units.percent(rowCv)));
        for (ReportedAlert alert : state.standing()) {
            text.append("; ").append(alert.kind()).append(' ').append(alert.place());
        }
        return text.toString();
    }

    private String progress(double atS) {
        double part = Math.max(0, Math.min(1, atS / lengthS));
        String time = FixedDecimals.text(Math.max(0, atS), 0) + " of " + FixedDecimals.text(lengthS, 0) + " s ";
        int room = Math.max(8, columns - Paint.width(title) - time.length() - 4);
        int full = (int) Math.round(part * room);
        return paint.strong(title) + MARGIN + time + "━".repeat(full) + paint.faint("─".repeat(room - full));
    }

    private String rate(ReportedMoment now) {
        Double error = now.rateErrorPct();
        if (error == null) {
            return "rate " + rateText(now);
        }
        UnaryOperator<String> colour = Math.abs(error) > rateLimitPct ? paint::bad : paint::good;
        return "rate " + gauge(error / (2 * rateLimitPct), colour) + " " + colour.apply(rateText(now));
    }

    private String rateText(ReportedMoment now) {
        Double rate = now.rateLpha();
        Double error = now.rateErrorPct();
        if (rate == null) {
            return "not known";
        }
        String text = units.rate(rate * TradeUnits.LPHA_M);
        return error == null ? text : text + " " + Units.signed(error, 0) + " %";
    }

    /** A pointer between two bounds; -0.5 and 0.5 are the limits, marked. */
    private static String gauge(double at, UnaryOperator<String> colour) {
        int middle = GAUGE / 2;
        int pointer = middle + (int) Math.round(Math.max(-1, Math.min(1, at)) * middle);
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < GAUGE; i++) {
            boolean limit = i == middle - middle / 2 || i == middle + middle / 2;
            text.append(i == pointer ? colour.apply("◆") : limit ? "|" : i == middle ? "+" : "·");
        }
        return text.toString();
    }

    /** What lands while the machine stands lands on one spot, and is no row. */
    private boolean stands(ReportedMoment now) {
        Double speedMps = now.speedMps();
        return speedMps != null && speedMps < walkingMps;
    }

    private String rows(ReportedMoment now) {
        if (stands(now)) {
            return "standing, no rows";
        }
        Double rowCv = now.rowCv();
        if (rowCv == null) {
            return "rows not known";
        }
        UnaryOperator<String> colour = rowCv > rowCvLimit ? paint::bad : paint::good;
        int full = (int) Math.round(Math.min(1, rowCv / (2 * rowCvLimit)) * ROW_BAR);
        return "row CV " + colour.apply("█".repeat(full) + "·".repeat(ROW_BAR - full) + " " + Units.percent(rowCv))
                + ", limit " + Units.percent(rowCvLimit);
    }

    private List<String> boom(ReportedMoment now, List<ReportedAlert> standing) {
        int width = Math.min(72, columns - 18);
        List<String> picture =
                BoomPicture.lines(now.heights(), width, colourOf("left", standing), colourOf("right", standing), paint);
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < picture.size(); i++) {
            String end = i == 1 ? " " + height(now, now.heights().size() - 1) : "";
            String start = i == 1 ? height(now, 0) : "";
            lines.add(" ".repeat(Math.max(0, 8 - Paint.width(start))) + start + " " + picture.get(i) + end);
        }
        return lines;
    }

    private String height(ReportedMoment now, int sensor) {
        if (sensor < 0 || sensor >= now.heights().size()) {
            return "";
        }
        Double heightM = now.heights().get(sensor).heightM();
        return heightM == null ? "?" : units.length(heightM);
    }

    private UnaryOperator<String> colourOf(String wing, List<ReportedAlert> standing) {
        boolean wrong = standing.stream()
                .anyMatch(a -> a.place().equals(wing) && a.kind().startsWith("wing-"));
        return wrong ? paint::bad : UnaryOperator.identity();
    }

    private List<String> alerts(List<ReportedAlert> standing) {
        List<String> lines = new ArrayList<>();
        if (standing.isEmpty()) {
            lines.add(MARGIN + paint.good("nothing to do"));
        }
        int shown = standing.size() > MOST_ALERTS ? MOST_ALERTS - 1 : standing.size();
        for (ReportedAlert alert : standing.subList(standing.size() - shown, standing.size())) {
            lines.add(cut(MARGIN + paint.bad(alert.kind() + " " + alert.place()) + "  " + alert.why()));
            lines.add(cut(MARGIN + "→ " + paint.strong(alert.act())));
        }
        if (shown < standing.size()) {
            lines.add(cut(MARGIN + "and " + (standing.size() - shown) + " older: " + kinds(standing, shown)));
        }
        return lines;
    }

    private static String kinds(List<ReportedAlert> standing, int shown) {
        List<String> words = new ArrayList<>();
        for (ReportedAlert alert : standing.subList(0, standing.size() - shown)) {
            words.add(alert.kind() + " " + alert.place());
        }
        return String.join(", ", words);
    }

    /** A frame is drawn over the one before, so no line may wrap. */
    private String cut(String text) {
        return Paint.width(text) <= columns ? text : Paint.cut(text, columns - 1) + "…";
    }
}
