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

    /** Lines nearer to the edge than so many rows may feed rows beyond it: a stream is hardly wider than four rows. */
    private static final int MOST_ROWS_ACROSS = 3;

    /** Half the width of an even band over its standard deviation. */
    private static final double HALF_PER_SIGMA = Math.sqrt(3);

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
    private final double halfRowsPerSigma;
    private final double[] shares = new double[RowSpread.MOST_ROWS];

    RowGrid(BoomLayout boom) {
        rowM = boom.rowM();
        perRow = 1 / rowM;
        halfRowsPerSigma = HALF_PER_SIGMA * perRow;
        phase = boom.rowPhase();
        widthM = boom.widthM();
        double halfRows = 0.5 * widthM / rowM;
        // A row on the very edge is counted in; the slack is for sums of spacings that are not exact.
        first = (int) Math.ceil(-halfRows - phase - 1e-9);
        count = (int) Math.floor(halfRows - phase + 1e-9) - first + 1;
        margin = (int) Math.ceil(MARGIN_M * perRow) + SPARE;
        origin = margin - phase - first;
        most = length() - 1.0 - SPARE;
        mirrorFromM = 0.5 * widthM - MOST_ROWS_ACROSS * rowM;
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

    /**
     * Lets one stream of this pass fall.
     *
     * <p>The hat is straight but at its three corners, so a band that is spread evenly over {@code ±h} about its middle (h rows, the
     * same standard deviation as the stream) gives what its middle line gives, except where it lies across a row, d from its middle:
     * there the row gets {@code (h − d)²/2h} of it less and either neighbour half of that more. This is {@link RowSpread}, written
     * out for bands up to half a row to either side; wider ones are left to it.
     *
     * @param sigmaM spread of the stream across the rows, standard deviation, m
     */
    void add(double[] strip, double rightM, double sigmaM, double quantity) {
        double at = at(rightM);
        double half = sigmaM * halfRowsPerSigma;
        if (half > 0.5) {
            addWide(strip, at, sigmaM * perRow, quantity);
            return;
        }
        int left = (int) at;
        double beyond = at - left;
        double toRight = quantity * beyond;
        strip[left] += quantity - toRight;
        strip[left + 1] += toRight;
        boolean nearLeft = beyond < 0.5;
        double across = half - (nearLeft ? beyond : 1 - beyond);
        if (across > 0) {
            int row = nearLeft ? left : left + 1;
            double aside = quantity * across * across / (4 * half);
            strip[row - 1] += aside;
            strip[row] -= 2 * aside;
            strip[row + 1] += aside;
        }
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
        if (Math.abs(rightM) < mirrorFromM) {
            return 0;
        }
        return addOwn(strip, (rightM > 0 ? widthM : -widthM) - rightM, sigmaM, quantity);
    }

    private double addOwn(double[] strip, double rightM, double sigmaM, double quantity) {
        double at = at(rightM);
        double sigmaRows = sigmaM * perRow;
        int first = RowSpread.firstRow(at, sigmaRows);
        int rows = RowSpread.shares(at, sigmaRows, shares);
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
