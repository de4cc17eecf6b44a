package evenfall.ledger;

import evenfall.pattern.Fall;
import evenfall.pattern.Rows;
import evenfall.rig.BoomLayout;
import evenfall.sense.Unknown;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** The cell that the boom is over: what has fallen on its rows so far. Its rows are those of {@link Fall#own}. Used again for each cell. */
final class OpenCell {
    private final BoomLayout boom;
    final int rows;
    final int firstOwn;
    final int endOwn;
    final double[] rightM;
    /** Width of each row that lies under the boom, m. */
    final double[] underM;

    final double[] ownM3;
    final double[] mirroredM3;
    /** Way over which the section above a row was on, m. */
    final double[] onM;
    /** Way of that over which it is not known what it got, m. */
    final double[] unknownM;

    final Unknown[] why;
    double lengthM;
    double onRowsM3;
    double besideM3;
    double meteredM3;
    double treatedM2;
    double heightSumM2;
    double factorSumM;
    double fallSumM;
    LedgerCell.Ages ages = LedgerCell.Ages.NONE;

    private final int[] outletOver;
    private final boolean[] rowUnknown;
    private final double spacingM;

    OpenCell(BoomLayout boom) {
        this.boom = boom;
        Rows layout = new Rows(boom.rowM(), boom.rowPhase(), 0.5 * boom.widthM() + Fall.BESIDE_M);
        double halfM = 0.5 * boom.widthM();
        rows = layout.count();
        firstOwn = layout.firstAtOrRightOf(-halfM);
        endOwn = layout.endAtOrLeftOf(halfM);
        rightM = new double[rows];
        underM = new double[rows];
        outletOver = new int[rows];
        spacingM = boom.spacingM();
        for (int j = 0; j < rows; j++) {
            rightM[j] = layout.rightM(j);
            double leftEdgeM = Math.max(-halfM, rightM[j] - 0.5 * boom.rowM());
            double rightEdgeM = Math.min(halfM, rightM[j] + 0.5 * boom.rowM());
            underM[j] = Math.max(0, rightEdgeM - leftEdgeM);
            int over = (int) Math.floor((rightM[j] + halfM) / spacingM);
            outletOver[j] = Math.max(0, Math.min(boom.outlets() - 1, over));
        }
        ownM3 = new double[rows];
        mirroredM3 = new double[rows];
        onM = new double[rows];
        unknownM = new double[rows];
        why = new Unknown[rows];
        rowUnknown = new boolean[rows];
        clear();
    }

    void clear() {
        Arrays.fill(ownM3, 0);
        Arrays.fill(mirroredM3, 0);
        Arrays.fill(onM, 0);
        Arrays.fill(unknownM, 0);
        Arrays.fill(why, Unknown.NOT_YET);
        lengthM = 0;
        onRowsM3 = 0;
        besideM3 = 0;
        meteredM3 = 0;
        treatedM2 = 0;
        heightSumM2 = 0;
        factorSumM = 0;
        fallSumM = 0;
        ages = LedgerCell.Ages.NONE;
    }

    /**
     * A stretch of which all is known, or all but the heights of some outlets.
     *
     * @param wayM m
     * @param open which outlets are on
     * @param fall what falls; null where nothing comes out of any outlet
     * @param outletM3 what each open outlet gives on this stretch, m³
     * @param noHeight the reason where a height is not known
     */
    void known(double wayM, boolean[] open, @Nullable Fall fall, double outletM3, Unknown noHeight) {
        lengthM += wayM;
        boolean partly = fall != null && markUnknown(open, fall);
        for (int j = firstOwn; j < endOwn; j++) {
            if (open[outletOver[j]]) {
                onM[j] += wayM;
                if (partly && rowUnknown[j]) {
                    unknownM[j] += wayM;
                    why[j] = noHeight;
                }
            }
        }
        if (fall == null || fall.fallen() == 0) {
            return;
        }
        double onRows = 0;
        for (int j = 0; j < rows; j++) {
            double part = fall.own().amount(j) * outletM3;
            ownM3[j] += part;
            mirroredM3[j] += fall.mirrored().amount(j) * outletM3;
            if (j >= firstOwn && j < endOwn) {
                onRows += part;
            }
        }
        onRowsM3 += onRows;
        besideM3 += fall.fallen() * outletM3 - onRows;
        heightSumM2 += fall.meanHeightM() * wayM;
        factorSumM += fall.speedFactor() * wayM;
        fallSumM += wayM;
    }

    private boolean markUnknown(boolean[] open, Fall fall) {
        boolean some = false;
        for (int i = 0; i < open.length; i++) {
            if (open[i] && !fall.fell(i)) {
                if (!some) {
                    Arrays.fill(rowUnknown, false);
                    some = true;
                }
                double atM = boom.outletRightM(i);
                for (int j = firstOwn; j < endOwn; j++) {
                    rowUnknown[j] |= Math.abs(rightM[j] - atM) <= fall.reachM();
                }
            }
        }
        return some;
    }

    /**
     * A stretch of which it is not known what any row got.
     *
     * @param open which outlets are on; null where that is what is not known
     */
    void unknown(double wayM, boolean @Nullable [] open, Unknown reason) {
        lengthM += wayM;
        for (int j = firstOwn; j < endOwn; j++) {
            if (open == null || open[outletOver[j]]) {
                onM[j] += wayM;
                unknownM[j] += wayM;
                why[j] = reason;
            }
        }
    }

    /** Amounts on rows that are not known become NaN, those on rows beside the boom that such a row's outlet may reach among them. */
    void forgetUnknown(double reachM) {
        for (int j = 0; j < rows; j++) {
            int edge = Math.max(firstOwn, Math.min(endOwn - 1, j));
            if (unknownM[edge] > 0 && Math.abs(rightM[j] - rightM[edge]) <= reachM) {
                ownM3[j] = Double.NaN;
            }
        }
    }
}
