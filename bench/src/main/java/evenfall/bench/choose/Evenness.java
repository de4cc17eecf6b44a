package evenfall.bench.choose;

import evenfall.outlet.OutletType;
import evenfall.pattern.HeightWindow;
import evenfall.pattern.RowMeasures;
import evenfall.pattern.StaticPattern;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What height does to the rows of one outlet type, over the pressures at work. Every row CV is the mean over eight row phases, on a
 * level boom: the boom is taken to stand at one height from tip to tip.
 *
 * @param pressuresPa pressures that were looked at, from the lowest at work to the highest, Pa
 * @param window heights that hold the limit at each of these pressures; null where the set height does not
 * @param cvAtSetHeight row CV at the set height, mean over the pressures; null where no row is fed
 * @param expectedCv row CV when the height wanders, mean over heights and pressures; null likewise
 * @param withinShare share of heights and pressures at which rows keep the limit, 0 to 1
 * @param curve row CV by height at the middle pressure, from the ground up
 */
public record Evenness(
        List<Double> pressuresPa,
        @Nullable HeightWindow window,
        @Nullable Double cvAtSetHeight,
        @Nullable Double expectedCv,
        double withinShare,
        List<AtHeight> curve) {

    /**
     * @param heightM m over the ground
     * @param rowCv a ratio; null where no row is fed
     */
    public record AtHeight(double heightM, @Nullable Double rowCv) {}

    private static final int PHASES = 8;

    /** As the controller's height window: wide enough that the interior holds whole repeats of rows under outlets. */
    private static final int OUTLETS = 24;

    private static final int PRESSURES = 5;
    private static final double CURVE_TO_M = 1.2;
    private static final double CURVE_STEP_M = 0.02;

    public Evenness {
        pressuresPa = List.copyOf(pressuresPa);
        curve = List.copyOf(curve);
    }

    static Evenness of(Job job, OutletType type, Span workingPa) {
        List<Double> pressuresPa = pressures(workingPa);
        Wander.Visit[] visits = job.wander().visits(job.heightM());
        Mean atSet = new Mean();
        Mean expected = new Mean();
        double within = 0;
        for (double pressurePa : pressuresPa) {
            atSet.add(rowCv(job, type, job.heightM(), pressurePa), 1);
            for (Wander.Visit visit : visits) {
                Double cv = rowCv(job, type, visit.heightM(), pressurePa);
                expected.add(cv, visit.share());
                if (cv != null && cv <= job.limitCv()) {
                    within += visit.share();
                }
            }
        }
        return new Evenness(
                pressuresPa,
                window(job, type, pressuresPa),
                atSet.value(),
                expected.value(),
                Math.min(1, within / pressuresPa.size()),
                curve(job, type, pressuresPa.get(PRESSURES / 2)));
    }

    /** Equal steps of the streams' speed, which goes with the root of the pressure. */
    private static List<Double> pressures(Span workingPa) {
        List<Double> list = new ArrayList<>();
        double from = Math.sqrt(workingPa.low());
        double to = Math.sqrt(workingPa.high());
        for (int i = 0; i < PRESSURES; i++) {
            double root = from + (to - from) * i / (PRESSURES - 1);
            list.add(root * root);
        }
        return list;
    }

    private static @Nullable HeightWindow window(Job job, OutletType type, List<Double> pressuresPa) {
        double lowM = 0;
        double highM = HeightWindow.TALLEST_M;
        for (double pressurePa : pressuresPa) {
            HeightWindow window = HeightWindow.around(
                    type, job.spacingM(), job.rowM(), pressurePa, job.specificGravity(), job.heightM(), job.limitCv());
            if (window == null) {
                return null;
            }
            lowM = Math.max(lowM, window.lowM());
            highM = Math.min(highM, window.highM());
        }
        return new HeightWindow(lowM, highM);
    }

    private static List<AtHeight> curve(Job job, OutletType type, double pressurePa) {
        List<AtHeight> curve = new ArrayList<>();
        for (int i = 0; i * CURVE_STEP_M <= CURVE_TO_M + 1e-9; i++) {
            curve.add(new AtHeight(i * CURVE_STEP_M, rowCv(job, type, i * CURVE_STEP_M, pressurePa)));
        }
        return curve;
    }

    /** Mean row CV over the row phases; null where in one of them no row is fed. */
    static @Nullable Double rowCv(Job job, OutletType type, double heightM, double pressurePa) {
        double sum = 0;
        for (int phase = 0; phase < PHASES; phase++) {
            StaticPattern.Layout layout =
                    new StaticPattern.Layout(OUTLETS, job.spacingM(), job.rowM(), (double) phase / PHASES);
            RowMeasures rows = StaticPattern.of(type, layout, heightM, pressurePa, job.specificGravity())
                    .rowMeasures();
            if (rows == null) {
                return null;
            }
            sum += rows.rowCv();
        }
        return sum / PHASES;
    }

    /** A weighted mean; not known as soon as one part is not. */
    private static final class Mean {
        private double sum;
        private double weight;
        private boolean unknown;

        void add(@Nullable Double value, double itsWeight) {
            if (value == null) {
                unknown = true;
            } else {
                sum += itsWeight * value;
                weight += itsWeight;
            }
        }

        @Nullable
        Double value() {
            return unknown || weight == 0 ? null : sum / weight;
        }
    }
}
