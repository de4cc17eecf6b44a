package evenfall.sim.world;

import evenfall.rig.BoomLayout;

/**
 * The rows under the boom's own width and some beyond it on either side, and how a line that falls is shared among them.
 *
 * <p>Row j lies at {@code (j + phase) · w} right of the centre line; those within half the boom's width are its own, those beyond are
 * the neighbouring passes'. A line between two rows feeds both by nearness, {@code hat(x) = max(0, 1 − |x|)} of its distance in row
 * spacings: a band between two rows feeds both (common practice, no source), and the hats sum to 1, so nothing is lost. The adjoining
 * passes are taken to be this one's mirror image: a line at y stands for one at {@code ±W − y} too.
 *
 * <p>A strip is an array with a place for each of these rows, {@link #margin} of them before the own ones.
 */
final class RowGrid {
    /** How far beyond the boom's edge rows are kept apart, m; what falls further out counts as fallen on the outermost. */
    private static final double MARGIN_M = 4;

    /** Places beyond the outermost rows, so that what feeds rows beside a line never leaves the strip. */
    private static final int SPARE = 2;

    private final double rowM;
    private final double perRow;
    private final double phase;
    private final double widthM;
    private final int first;
    private final int count;
    private final int margin;
    private final double origin;
    private final double most;
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
        margin = (int) Math.ceil(MARGIN_M * perRow) + SPARE;
        origin = margin - phase - first;
        most = length() - 1.0 - SPARE;
        mirrorFromM = 0.5 * widthM - rowM;
    }

    /** How many own rows there are. */
    int count() {
        return count;
    }

    /** Place of the first own row in a strip. */
    int margin() {
        return margin;
    }

    /** Length of a strip. */
    int length() {
        return count + 2 * margin;
    }

    /** Place of an own row, m right of the centre line. */
    double rightM(int row) {
        return (row + first + phase) * rowM;
    }

    /** Place in a strip of a line, counted in rows; held within it. */
    private double at(double rightM) {
        double at = rightM * perRow + origin;
        if (at < SPARE) {
            return SPARE;
        }
        return at > most ? most : at;
    }

    /** Lets one line of this pass fall. */
    void add(double[] strip, double rightM, double quantity) {
        double at = at(rightM);
        int left = (int) at;
        double toRight = quantity * (at - left);
        strip[left] += quantity - toRight;
        strip[left + 1] += toRight;
    }

    /**
     * Lets the neighbours' lines fall that mirror this one, as far as they meet own rows.
     *
     * @return what they put there
     */
    double addMirrored(double[] strip, double rightM, double quantity) {
        if (rightM > mirrorFromM) {
            return addOwn(strip, widthM - rightM, quantity);
        }
        if (rightM < -mirrorFromM) {
            return addOwn(strip, -widthM - rightM, quantity);
        }
        return 0;
    }

    private double addOwn(double[] strip, double rightM, double quantity) {
        double at = at(rightM);
        int left = (int) at;
        double toRight = quantity * (at - left);
        double kept = 0;
        if (isOwn(left)) {
            strip[left] += quantity - toRight;
            kept = quantity - toRight;
        }
        if (isOwn(left + 1)) {
            strip[left + 1] += toRight;
            kept += toRight;
        }
        return kept;
    }

    private boolean isOwn(int place) {
        return place >= margin && place < margin + count;
    }
}
