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

    /** The same for lines that are wider than {@link #NARROW}. */
    private static final int WIDE_EDGE_ROWS = 8;

    /** Half the width of an even band over its standard deviation. */
    private static final double HALF_PER_SIGMA = Math.sqrt(3);

    /** Keeps a quotient finite for a line without spread, which has nothing to lose by it. */
    private static final double TINY = 1e-12;

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
    private final double withinFrom;
    private final double withinTo;
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
        withinFrom = at(-0.5 * widthM) + EDGE_ROWS;
        withinTo = at(0.5 * widthM) - EDGE_ROWS;
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
    double at(double rightM) {
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
    double halfRows(double sigmaM) {
        return sigmaM * halfRowsPerSigma;
    }

    /** Whether a narrow line lies so far within the boom that no row beyond its edge has to do with it. */
    boolean isWellWithin(double at) {
        return at > withinFrom && at < withinTo;
    }

    /**
     * Lets a stream fall that reaches less than half a row to either side.
     *
     * <p>The hat is straight but at its three corners, so a band that is spread evenly over {@code ±h} about its middle (h rows, the
     * same standard deviation as the stream) gives what its middle line gives, except where it lies across a row, d from its middle:
     * there the row gets {@code (h − d)²/2h} of it less and either neighbour half of that more. This is {@link RowSpread}, written
     * out.
     *
     * @param at from {@link #at}, within the strip
     * @param half from {@link #halfRows}, at most {@link #NARROW}
     */
    static void addNarrow(double[] strip, double at, double half, double quantity) {
        int row = (int) (at + 0.5);
        double right = at - row;
        double away = Math.abs(right);
        // Positive part by way of the magnitude: which lines lie across a row is as good as random, and a wrong guess
        // of a branch
        // costs more than all of this.
        double across = half - away + Math.abs(half - away);
        double aside = across * across / (16 * half + TINY);
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
        double mine = at(rightM);
        double extra = halfRows(sigmaM) > NARROW ? WIDE_EDGE_ROWS - EDGE_ROWS : 0;
        if (mine > withinFrom + extra && mine < withinTo - extra) {
            return 0;
        }
        double at = heldAt((rightM > 0 ? widthM : -widthM) - rightM);
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
