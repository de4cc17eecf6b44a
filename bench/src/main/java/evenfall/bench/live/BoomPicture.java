package evenfall.bench.live;

import evenfall.bench.received.ReportedMoment;
import evenfall.bench.report.Paint;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/** The boom over the ground, seen from behind, out of the heights at the sensors. */
final class BoomPicture {
    private static final int LINES = 3;
    private static final String WITHIN_LINE = "▁─▔";
    private static final int LEVELS = LINES * WITHIN_LINE.length();

    /** Nine levels of 12 cm: a boom at half a metre hangs in the middle. */
    private static final double LEVEL_M = 0.12;

    private BoomPicture() {}

    /**
     * @param columns characters across
     * @param left colours the left wing's part
     * @param right colours the right wing's part
     * @return {@link #LINES} lines and the ground below them
     */
    static List<String> lines(
            List<ReportedMoment.Height> sensors,
            int columns,
            UnaryOperator<String> left,
            UnaryOperator<String> right,
            Paint paint) {
        char[][] grid = new char[LINES][columns];
        for (char[] line : grid) {
            Arrays.fill(line, ' ');
        }
        for (int c = 0; c < columns; c++) {
            Double heightM = heightAt(sensors, (c + 0.5) / columns);
            if (heightM != null) {
                int level = (int) Math.floor(heightM / LEVEL_M);
                int shown = Math.max(0, Math.min(LEVELS - 1, level));
                grid[LINES - 1 - shown / WITHIN_LINE.length()][c] = WITHIN_LINE.charAt(shown % WITHIN_LINE.length());
            }
        }
        List<String> lines = new ArrayList<>();
        int third = columns / 3;
        for (char[] line : grid) {
            String text = new String(line);
            lines.add(left.apply(text.substring(0, third))
                    + text.substring(third, columns - third)
                    + right.apply(text.substring(columns - third)));
        }
        lines.add(paint.faint("▀".repeat(columns)));
        return lines;
    }

    /** Straight between the nearest sensors that know, level beyond the outermost; null where none knows. */
    static @Nullable Double heightAt(List<ReportedMoment.Height> sensors, double acrossPart) {
        if (sensors.isEmpty()) {
            return null;
        }
        double leftM = sensors.get(0).rightM();
        double rightM = sensors.get(sensors.size() - 1).rightM();
        double atM = leftM + acrossPart * (rightM - leftM);
        ReportedMoment.Height before = null;
        for (ReportedMoment.Height sensor : sensors) {
            Double heightM = sensor.heightM();
            if (heightM == null) {
                continue;
            }
            if (sensor.rightM() >= atM) {
                Double beforeM = before == null ? null : before.heightM();
                if (before == null || beforeM == null || sensor.rightM() == before.rightM()) {
                    return heightM;
                }
                double part = (atM - before.rightM()) / (sensor.rightM() - before.rightM());
                return beforeM + part * (heightM - beforeM);
            }
            before = sensor;
        }
        return before == null ? null : before.heightM();
    }
}
