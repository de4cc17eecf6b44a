package evenfall.pattern;

import evenfall.outlet.OutletType;
import org.jspecify.annotations.Nullable;

/**
 * The heights between which an outlet type holds a limit of row CV at a given pressure; computed from the pattern, never
 * tabulated.
 *
 * @param lowM lowest height that holds, m; 0 where even the ground holds
 * @param highM highest height that holds, m; {@link #TALLEST_M} where every height looked at holds
 */
public record HeightWindow(double lowM, double highM) {
    /** Heights above this are not looked at, m: no boom works there. */
    public static final double TALLEST_M = 2.0;

    private static final double STEP_M = 0.01;
    private static final int PHASES = 8;

    /** Wide enough that the interior holds whole repeats of rows under outlets, small enough to be quick. */
    private static final int OUTLETS = 24;

    /** Whether every height looked at holds, as with a bar. */
    public boolean isOpen() {
        return lowM <= 0 && highM >= TALLEST_M;
    }

    /**
     * The window around a height, by the mean row CV over eight row phases (rows rarely lie the same way under the boom twice).
     *
     * @param spacingM between outlets, m
     * @param rowM row spacing, m
     * @param aroundM the height that must be in it, m
     * @param limitCv row CV that must hold, a ratio
     * @return null where the limit does not hold at {@code aroundM} itself
     */
    public static @Nullable HeightWindow around(
            OutletType type,
            double spacingM,
            double rowM,
            double pressurePa,
            double specificGravity,
            double aroundM,
            double limitCv) {
        int start = (int) Math.round(aroundM / STEP_M);
        if (!holds(type, spacingM, rowM, pressurePa, specificGravity, start, limitCv)) {
            return null;
        }
        int low = start;
        while (low > 0 && holds(type, spacingM, rowM, pressurePa, specificGravity, low - 1, limitCv)) {
            low--;
        }
        int tallest = (int) Math.round(TALLEST_M / STEP_M);
        int high = start;
        while (high < tallest && holds(type, spacingM, rowM, pressurePa, specificGravity, high + 1, limitCv)) {
            high++;
        }
        return new HeightWindow(low * STEP_M, high * STEP_M);
    }

    private static boolean holds(
            OutletType type,
            double spacingM,
            double rowM,
            double pressurePa,
            double specificGravity,
            int step,
            double limitCv) {
        double sum = 0;
        for (int phase = 0; phase < PHASES; phase++) {
            var layout = new StaticPattern.Layout(OUTLETS, spacingM, rowM, (double) phase / PHASES);
            RowMeasures measures = StaticPattern.of(type, layout, step * STEP_M, pressurePa, specificGravity)
                    .rowMeasures();
            if (measures == null) {
                return false;
            }
            sum += measures.rowCv();
        }
        return sum / PHASES <= limitCv;
    }
}
