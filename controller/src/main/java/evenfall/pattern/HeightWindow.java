package evenfall.pattern;

import evenfall.outlet.OutletType;
import evenfall.outlet.Stream;
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
        Search search = new Search(type, spacingM, rowM, type.speedFactor(pressurePa, specificGravity), limitCv);
        int tallest = (int) Math.round(TALLEST_M / STEP_M);
        int low = step(aroundM);
        int high = low;
        if (!search.holds(low)) {
            return null;
        }
        while (low > 0 && search.holds(low - 1)) {
            low--;
        }
        while (high < tallest && search.holds(high + 1)) {
            high++;
        }
        return new HeightWindow(low * STEP_M, high * STEP_M);
    }

    /** Whether the limit holds at one height, as {@link #around} counts it. */
    public static boolean holds(
            OutletType type,
            double spacingM,
            double rowM,
            double pressurePa,
            double specificGravity,
            double heightM,
            double limitCv) {
        return new Search(type, spacingM, rowM, type.speedFactor(pressurePa, specificGravity), limitCv)
                .holds(step(heightM));
    }

    private static int step(double heightM) {
        return Math.min((int) Math.round(TALLEST_M / STEP_M), Math.max(0, (int) Math.round(heightM / STEP_M)));
    }

    /** Runs on the board whenever pressure has moved, so it keeps its arrays from one height to the next. */
    private static final class Search {
        private static final int PHASES = 8;

        /** Wide enough that the interior holds whole repeats of rows under outlets, small enough to be quick. */
        private static final int OUTLETS = 24;

        private final OutletType type;
        private final StaticPattern.Layout layout;
        private final double speedFactor;
        private final double limitCv;
        private final double[] landingM;
        private final Rows[] rowsOfPhase = new Rows[PHASES];

        Search(OutletType type, double spacingM, double rowM, double speedFactor, double limitCv) {
            this.type = type;
            this.layout = new StaticPattern.Layout(OUTLETS, spacingM, rowM, 0);
            this.speedFactor = speedFactor;
            this.limitCv = limitCv;
            this.landingM = new double[type.streams().size()];
            for (int phase = 0; phase < PHASES; phase++) {
                rowsOfPhase[phase] = new Rows(rowM, (double) phase / PHASES, 0.5 * layout.widthM());
            }
        }

        boolean holds(int step) {
            double reachM = layout.rowM() + land(step * STEP_M);
            double interiorM = 0.5 * layout.widthM() - reachM;
            double sum = 0;
            for (Rows rows : rowsOfPhase) {
                rows.clear();
                for (int outlet = 0; outlet < OUTLETS; outlet++) {
                    for (int i = 0; i < landingM.length; i++) {
                        rows.add(
                                layout.outletRightM(outlet) + landingM[i],
                                type.streams().get(i).share());
                    }
                }
                RowMeasures measures = rows.measures(rows.firstAtOrRightOf(-interiorM), rows.endAtOrLeftOf(interiorM));
                if (measures == null) {
                    return false;
                }
                sum += measures.rowCv();
            }
            return sum / PHASES <= limitCv;
        }

        private double land(double heightM) {
            double farM = 0;
            for (int i = 0; i < landingM.length; i++) {
                Stream stream = type.streams().get(i);
                double exitMps = stream.exitMps() * speedFactor;
                double flightS = Flight.timeS(exitMps * stream.downPart(), heightM);
                landingM[i] = stream.offsetM() + exitMps * stream.rightPart() * flightS;
                farM = Math.max(farM, Math.abs(landingM[i]));
            }
            return farM;
        }
    }
}
