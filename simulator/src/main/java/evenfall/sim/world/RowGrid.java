package evenfall.sim.world;

import evenfall.rig.BoomLayout;

/**
 * The rows under the boom's own width, and how a line that falls is shared among them.
 *
 * <p>Row j lies at {@code (j + phase) · w} right of the centre line; those within half the boom's width are its own. A line between
 * two rows feeds both by nearness, {@code hat(x) = max(0, 1 − |x|)} of its distance in row spacings: a band between two rows feeds
 * both (common practice, no source), and the hats sum to 1, so nothing is lost. The adjoining passes are taken to be this one's
 * mirror image: a line at y stands for one at {@code ±W − y} too.
 */
final class RowGrid {
    private final double rowM;
    private final double perRow;
    private final double phase;
    private final double widthM;
    private final int first;
    private final int count;
    private final double mirrorFromM;

    RowGrid(BoomLayout boom) {
        rowM = boom.rowM();
        perRow = 1 / rowM;
        phase = boom.rowPhase();
        widthM = boom.widthM();
        double halfRows = 0.5 * widthM / rowM;
        // A row on the very edge is counted in; the slack is for sums of spacings that are not exact.
        first = (int) Math.ceil(-halfRows - phase - 1e-9);
        count = (int) Math.floor(halfRows - phase + 1e-9) - first + 1;
        mirrorFromM = 0.5 * widthM - rowM;
    }

    int count() {
        return count;
    }

    /** Place of an own row, m right of the centre line. */
    double rightM(int row) {
        return (row + first + phase) * rowM;
    }

    /**
     * Lets one line of this pass fall.
     *
     * @return what fell on own rows; the rest fell on the neighbours'
     */
    double add(double[] into, double rightM, double quantity) {
        double at = rightM * perRow - phase - first;
        int left = (int) Math.floor(at);
        double toRight = quantity * (at - left);
        double kept = 0;
        if (left >= 0 && left < count) {
            into[left] += quantity - toRight;
            kept = quantity - toRight;
        }
        if (left >= -1 && left < count - 1) {
            into[left + 1] += toRight;
            kept += toRight;
        }
        return kept;
    }

    /**
     * Lets the neighbours' lines fall that mirror this one.
     *
     * @return what they put on own rows
     */
    double addMirrored(double[] into, double rightM, double quantity) {
        if (rightM > mirrorFromM) {
            return add(into, widthM - rightM, quantity);
        }
        if (rightM < -mirrorFromM) {
            return add(into, -widthM - rightM, quantity);
        }
        return 0;
    }
}
