package evenfall.bench.sheet;

import evenfall.bench.received.ReportedMoment;
import evenfall.bench.run.RunRecord;
import evenfall.bench.score.GroundMap;
import evenfall.pattern.BoomPattern;
import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import evenfall.sense.BoomShape;
import evenfall.sense.OutletHeights;
import evenfall.sense.Quantity;
import evenfall.sense.Unknown;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What each row got by the monitor's own numbers, on the cells of the true map: its heights and its pressure through its own pattern,
 * times its rate. 1 is the mean of the rows that got anything.
 *
 * <p>Messages say how wide the boom was switched on, not which sections; where a part was off, that cell is not known. Neither is it
 * where height, pressure or rate were not known.
 */
final class ReportedMap {
    /** Standard deviation of a height, m, for weighing sensors against each other; a choice of ours, the same for all. */
    private static final double HEIGHT_SD_M = 0.02;

    private final double[][] share;

    private ReportedMap(double[][] share) {
        this.share = share;
    }

    static ReportedMap of(RunRecord run) {
        return new Maker(run).map();
    }

    /** Over the mean; null where it is not known. */
    @Nullable
    Double share(int cell, int row) {
        double value = share[cell][row];
        return Double.isNaN(value) ? null : value;
    }

    private static final class Maker {
        private final GroundMap ground;
        private final Rig rig;
        private final RunRecord run;
        private final BoomShape shape;
        private final BoomPattern pattern;
        private final OutletHeights heights;
        private final boolean[] open;

        Maker(RunRecord run) {
            this.run = run;
            ground = run.ground();
            rig = run.rig();
            BoomLayout boom = rig.boom();
            double[] outletM = new double[boom.outlets()];
            for (int i = 0; i < outletM.length; i++) {
                outletM[i] = boom.outletRightM(i);
            }
            heights = OutletHeights.of(outletM.length);
            open = new boolean[outletM.length];
            Arrays.fill(open, true);
            shape = new BoomShape(rig.sensors().heights(), outletM, boom.hingeM());
            pattern = new BoomPattern(
                    boom, rig.outlet(), rig.target().heightM(), rig.liquid().specificGravity());
        }

        ReportedMap map() {
            double[][] sum = new double[ground.cells()][ground.rows()];
            int[] count = new int[ground.cells()];
            Way way = new Way(run.course());
            for (ReportedMoment moment : run.report().moments()) {
                int cell = cellAt(way.atM(moment.atS()));
                Double widthM = moment.widthM();
                if (cell >= 0 && widthM != null && !(widthM > 0)) {
                    // All is off, and known to be: nothing falls.
                    count[cell]++;
                    continue;
                }
                if (cell < 0 || !fall(moment)) {
                    continue;
                }
                count[cell]++;
                double rate = moment.rateLpha() == null ? Double.NaN : moment.rateLpha();
                addRows(sum[cell], rate);
            }
            for (int cell = 0; cell < sum.length; cell++) {
                for (int row = 0; row < ground.rows(); row++) {
                    sum[cell][row] = count[cell] == 0 ? Double.NaN : sum[cell][row] / count[cell];
                }
            }
            bridge(sum, count);
            return new ReportedMap(overMean(sum));
        }

        private int cellAt(double atM) {
            if (ground.cells() < 2) {
                return -1;
            }
            double cellM = ground.cellFromM(1) - ground.cellFromM(0);
            int cell = (int) Math.floor((atM - ground.cellFromM(0)) / cellM);
            return cell >= 0 && cell < ground.cells() ? cell : -1;
        }

        /** Whether all was known that it takes. */
        private boolean fall(ReportedMoment moment) {
            Double pressurePa = moment.pressurePa();
            Double widthM = moment.widthM();
            boolean whole = widthM != null
                    && widthM > rig.boom().widthM() - 0.5 * rig.boom().spacingM();
            if (pressurePa == null || !(pressurePa > 0) || moment.rateLpha() == null || !whole) {
                return false;
            }
            List<Quantity> sensorM = new ArrayList<>();
            for (ReportedMoment.Height height : moment.heights()) {
                Double known = height.heightM();
                sensorM.add(
                        known == null
                                ? Quantity.unknown(Unknown.NOT_YET, -1)
                                : Quantity.known(known, HEIGHT_SD_M * HEIGHT_SD_M, 0));
            }
            if (sensorM.size() != rig.sensors().heights().size()) {
                return false;
            }
            shape.spread(sensorM, heights);
            pattern.compute(
                    heights.heightM(),
                    heights.known(),
                    open,
                    rig.outlet().speedFactor(pressurePa, rig.liquid().specificGravity()));
            return true;
        }

        private void addRows(double[] to, double rate) {
            double reachM = rig.boom().spacingM();
            for (int row = 0; row < to.length; row++) {
                double atM = ground.rowRightM(row);
                int found = pattern.rows().firstAtOrRightOf(atM - 1e-6);
                boolean known = found < pattern.rows().count() && knownAround(atM, reachM);
                to[row] += known ? pattern.rows().amount(found) * rate : Double.NaN;
            }
        }

        private boolean knownAround(double atM, double reachM) {
            for (int outlet = 0; outlet < open.length; outlet++) {
                if (!heights.known()[outlet] && Math.abs(rig.boom().outletRightM(outlet) - atM) <= reachM) {
                    return false;
                }
            }
            return true;
        }

        /** Driven fast, a cell may lie between two messages: then it is what the one before it is. */
        private static void bridge(double[][] sum, int[] count) {
            for (int cell = 1; cell + 1 < count.length; cell++) {
                if (count[cell] == 0 && count[cell - 1] > 0 && count[cell + 1] > 0) {
                    sum[cell] = sum[cell - 1].clone();
                }
            }
        }

        private static double[][] overMean(double[][] sum) {
            double all = 0;
            long n = 0;
            for (double[] cell : sum) {
                for (double amount : cell) {
                    if (amount > 0) {
                        all += amount;
                        n++;
                    }
                }
            }
            for (double[] cell : sum) {
                for (int row = 0; row < cell.length; row++) {
                    cell[row] = all > 0 ? cell[row] * n / all : Double.NaN;
                }
            }
            return sum;
        }
    }
}
