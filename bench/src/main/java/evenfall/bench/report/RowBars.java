package evenfall.bench.report;

import java.util.ArrayList;
import java.util.List;

/**
 * Crop rows as bars side by side: at a glance, does every row get its share?
 *
 * <p>A bar is as high as what the row got over the mean; rows below 80 % carry a {@code -} below them, rows above 120 % a
 * {@code +}.
 */
public final class RowBars {
    /** Below this share of the mean a row is underfed, above {@link #MUCH} overfed: common practice, no source. */
    public static final double LITTLE = 0.8;

    public static final double MUCH = 1.2;

    private static final String EIGHTHS = " ▁▂▃▄▅▆▇█";
    private static final double TALLEST = 2.0;

    private RowBars() {}

    /**
     * A picture of several lines: the bars, a scale at the left with the mean at 100 %, and the marks below.
     *
     * @param shares what each row got over the mean
     * @param barWidth characters a row
     * @param textLines height of the bars in lines; 100 % lies at half of it
     */
    public static List<String> picture(List<Double> shares, int barWidth, int textLines, Paint paint) {
        List<String> lines = new ArrayList<>();
        for (int line = textLines - 1; line >= 0; line--) {
            StringBuilder text = new StringBuilder(scale(line, textLines));
            for (double share : shares) {
                double inLines = Math.min(share, TALLEST) / TALLEST * textLines - line;
                int eighth = (int) Math.round(8 * Math.max(0, Math.min(1, inLines)));
                String bar = String.valueOf(EIGHTHS.charAt(eighth)).repeat(barWidth - 1);
                text.append(coloured(bar, share, paint)).append(' ');
            }
            lines.add(text.toString().stripTrailing());
        }
        StringBuilder marks = new StringBuilder("        ");
        for (double share : shares) {
            String mark = share < LITTLE ? "-" : share > MUCH ? "+" : " ";
            marks.append(coloured(mark.repeat(barWidth - 1), share, paint)).append(' ');
        }
        if (Paint.width(marks.toString().strip()) > 0) {
            lines.add(marks.toString().stripTrailing());
        }
        return lines;
    }

    /** One line: a character a row, full height at twice the mean. */
    public static String strip(List<Double> shares, Paint paint) {
        StringBuilder text = new StringBuilder();
        for (double share : shares) {
            int eighth = (int) Math.round(8 * Math.max(0, Math.min(1, share / TALLEST)));
            text.append(coloured(String.valueOf(EIGHTHS.charAt(eighth)), share, paint));
        }
        return text.toString();
    }

    private static String scale(int line, int textLines) {
        if (line == textLines - 1) {
            return "  200 % ";
        }
        if (textLines % 2 == 0 && line == textLines / 2 - 1) {
            return "  100 % ";
        }
        return "        ";
    }

    private static String coloured(String bar, double share, Paint paint) {
        return share < LITTLE ? paint.low(bar) : share > MUCH ? paint.high(bar) : bar;
    }
}
