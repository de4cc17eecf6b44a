package evenfall.sim.world;

import evenfall.rig.BoomLayout;
import evenfall.sim.jet.RowSpread;

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

    /** Lines nearer to the boom's edge than so many rows may feed rows beyond it, and their mirror images own ones. */
    private static final int EDGE_ROWS = 2;

    /** Half the width of an even band over its standard deviation. */
    private static final double HALF_PER_SIGMA = Math.sqrt(3);

    /** Up to this half width, in rows, a stream reaches three rows at most. */
    static final double NARROW = 0.5;

    private final double rowM;
    private final double perRow;
    private final double phase;
    private final double widthM;
    private final int first;
    private final int count;
    private final int margin;
    private final double origin;
    private final double most;
    private final double clearM;
    private final double halfRowsPerSigma;
    private final double[] shares = new double[RowSpread.MOST_ROWS];

    RowGrid(BoomLayout boom) {
        rowM = boom.rowM();
        perRow = 1 / rowM;
        halfRowsPerSigma = HALF_PER_SIGMA * perRow;
        phase = boom.rowPhase();
        clearM = 0.5 * boom.widthM() - EDGE_ROWS * rowM;
        widthM = boom.widthM();
        double halfRows = 0.5 * widthM / rowM;
        // A row on the very edge is counted in; the slack is for sums of spacings that are not exact.
        first = (int) Math.ceil(-halfRows - phase - 1e-9);
        count = (int) Math.floor(halfRows - phase + 1e-9) - first + 1;
        margin = (int) Math.ceil(MARGIN_M * perRow) + SPARE;
        origin = margin - phase - first;
        most = length() - 1.0 - SPARE;
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

    /**
     * Lets one stream of this pass fall, anywhere and however wide.
     *
     * @param sigmaM spread of the stream across the rows, standard deviation, m
     */
    void add(double[] strip, double rightM, double sigmaM, double quantity) {
        double at = heldAt(rightM);
        double half = halfRows(sigmaM);
        if (half > NARROW) {
            addWide(strip, at, sigmaM * perRow, quantity);
        } else {
            addNarrow(strip, at, half, quantity);
        }
    }

    /** Place of a line in a strip, counted in rows. */
    private double at(double rightM) {
        return rightM * perRow + origin;
    }

    /** The same, held within the strip. */
    private double heldAt(double rightM) {
        double at = at(rightM);
        if (at < SPARE) {
            return SPARE;
        }
        return at > most ? most : at;
    }

    /** Half the width, in rows, of the even band that stands for a stream. */
    private double halfRows(double sigmaM) {
        return sigmaM * halfRowsPerSigma;
    }

    /** Rows in a metre. */
    double perRow() {
        return perRow;
    }

    /** Place in a strip of the centre line, counted in rows. */
    double origin() {
        return origin;
    }

    /** Half the width, in rows, of the even band that stands for a stream of standard deviation 1 m. */
    double halfRowsPerSigma() {
        return halfRowsPerSigma;
    }

    /** A narrow line nearer to the middle than so many rows has nothing to do with rows beyond the boom's edge. */
    double clearRows() {
        return 0.5 * widthM * perRow - EDGE_ROWS;
    }

    private void addNarrow(double[] strip, double at, double half, double quantity) {
        int row = (int) (at + 0.5);
        double right = at - row;
        double away = Math.abs(right);
        double across = half - away;
        double aside = across > 0 ? across * across / (4 * half) : 0;
        strip[row - 1] += quantity * (0.5 * (away - right) + aside);
        strip[row] += quantity * (1 - away - 2 * aside);
        strip[row + 1] += quantity * (0.5 * (away + right) + aside);
    }

    private void addWide(double[] strip, double at, double sigmaRows, double quantity) {
        int first = RowSpread.firstRow(at, sigmaRows);
        int rows = RowSpread.shares(at, sigmaRows, shares);
        for (int j = 0; j < rows; j++) {
            int place = Math.max(0, Math.min(strip.length - 1, first + j));
            strip[place] += quantity * shares[j];
        }
    }

    /**
     * Lets the neighbours' stream fall that mirrors this one, as far as it meets own rows.
     *
     * @return what it puts there
     */
    double addMirrored(double[] strip, double rightM, double sigmaM, double quantity) {
        if (Math.abs(rightM) + HALF_PER_SIGMA * sigmaM < clearM) {
            return 0;
        }
        double at = heldAt((rightM > 0 ? widthM : -widthM) - rightM);
        double half = halfRows(sigmaM);
        if (at + half + 1 < margin || at - half > margin + count) {
            return 0;
        }
        int first = RowSpread.firstRow(at, sigmaM * perRow);
        int rows = RowSpread.shares(at, sigmaM * perRow, shares);
        double kept = 0;
        for (int j = 0; j < rows; j++) {
            if (isOwn(first + j)) {
                strip[first + j] += quantity * shares[j];
                kept += quantity * shares[j];
            }
        }
        return kept;
    }

    private boolean isOwn(int place) {
        return place >= margin && place < margin + count;
    }
}
