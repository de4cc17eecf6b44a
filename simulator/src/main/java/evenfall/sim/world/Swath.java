package evenfall.sim.world;

/**
 * One stream of all outlets over several steps: on which rows and in which cell each of its lines falls, and how much.
 *
 * <p>Worked out line by line in loops over long rows that the compiler turns into vector instructions; what remains for each line is
 * to add three numbers to three places. A line that crosses into another cell meanwhile, is wide, or lies near the boom's edge or
 * before the first cell is not {@linkplain #isPlain plain}: the {@link RowLedger} shares it by itself.
 *
 * <p>The loops are short on purpose: the compiler (JDK 17) leaves long ones as they are.
 *
 * <p>How a stream is shared: the hat is straight but at its three corners, so a band that is spread evenly over {@code ±h} about its
 * middle (h rows, the same standard deviation as the stream) gives what its middle line gives, except where it lies across a row, d
 * from its middle: there the row gets {@code (h − d)²/2h} of it less and either neighbour half of that more. This is
 * {@link evenfall.sim.jet.RowSpread}, written out for bands of up to half a row to either side.
 */
final class Swath {
    /** 1.5 · 2⁵²: adding it rounds to a whole number, as in the ground's tiles. */
    private static final double ROUNDER = 0x1.8p52;

    /** Keeps a quotient finite for a line without spread, which has nothing to lose by it. */
    private static final double TINY = 1e-12;

    /** Takes the cell of a line that is odd, by however little, far away from all cells. */
    private static final double FAR = 1e60;

    private static final double M3_L = 1000;

    private final RowGrid grid;

    /** The nearest row, as the last bits of a number that has been rounded. */
    private final double[] row;

    private final double[] beside;
    private final double[] aside;
    private final double[] to;
    private final double[] from;
    /** A plain line's cell; any other number for another line. */
    private final double[] cell;

    private final double[] left;
    private final double[] middle;
    private final double[] right;

    /** 0 for a narrow line, else above it or not a number. */
    private final double[] odd;

    /** @param places most lines at once */
    Swath(RowGrid grid, int places) {
        this.grid = grid;
        row = new double[places];
        beside = new double[places];
        aside = new double[places];
        to = new double[places];
        from = new double[places];
        cell = new double[places];
        left = new double[places];
        middle = new double[places];
        right = new double[places];
        odd = new double[places];
    }

    /** Takes all lines of a stream. */
    void take(Falls falls, int stream, double perCell, double cellsBefore) {
        int n = falls.places();
        double[] volumeM3 = falls.lines.quantity()[stream];
        rows(falls.lines.rightM()[stream], grid.perRow(), grid.origin(), n);
        along(falls.outletM, falls.lines.backM()[stream], falls.goneM, perCell, cellsBefore, n);
        spread(falls.lines.sigmaM()[stream], grid.halfRowsPerSigma(), n);
        edges(grid.origin(), grid.clearRows(), n);
        crossings(n);
        sides(volumeM3, n);
        centre(volumeM3, n);
    }

    /**
     * Writes down lines that are plain and fall in one cell, from one of them on up to the first that does not.
     *
     * @return that one; {@code end} when there is none
     */
    int put(double[] strip, int inCell, int first, int end) {
        double same = inCell;
        int i = first;
        for (; i < end; i++) {
            if (cell[i] != same) {
                break;
            }
            int at = (int) Double.doubleToRawLongBits(row[i]);
            strip[at - 1] += left[i];
            strip[at] += middle[i];
            strip[at + 1] += right[i];
        }
        return i;
    }

    /** Whether a line feeds three own rows in one cell. */
    boolean isPlain(int i) {
        return cell[i] < Integer.MAX_VALUE;
    }

    /** Whether a line feeds three own rows, be it in one cell or over several. */
    boolean isNarrow(int i) {
        return odd[i] == 0;
    }

    /** Writes down a part of a narrow line. */
    void putPart(double[] strip, int i, double part) {
        int at = (int) Double.doubleToRawLongBits(row[i]);
        strip[at - 1] += part * left[i];
        strip[at] += part * middle[i];
        strip[at + 1] += part * right[i];
    }

    /** Where a line's last drop falls, in cells. */
    double to(int i) {
        return to[i];
    }

    /** Where its first drop falls, in cells. */
    double from(int i) {
        return from[i];
    }

    /** The cell that a plain line falls in. */
    int cell(int i) {
        return (int) cell[i];
    }

    /** The nearest row, and how far to the right of it the line falls, in rows. */
    private void rows(double[] rightM, double perRow, double origin, int n) {
        for (int i = 0; i < n; i++) {
            double at = rightM[i] * perRow + origin;
            double nearest = at + ROUNDER;
            row[i] = nearest;
            beside[i] = at - (nearest - ROUNDER);
        }
    }

    private void along(double[] outletM, double[] backM, double[] goneM, double perCell, double cellsBefore, int n) {
        for (int i = 0; i < n; i++) {
            double last = (outletM[i] - backM[i]) * perCell + cellsBefore;
            to[i] = last;
            from[i] = last - goneM[i] * perCell;
        }
    }

    /** What either neighbour gets more where a band lies across a row; a wide one is odd. */
    private void spread(double[] sigmaM, double halfRowsPerSigma, int n) {
        for (int i = 0; i < n; i++) {
            double half = sigmaM[i] * halfRowsPerSigma;
            double across = half - Math.abs(beside[i]);
            // Twice the positive part.
            double reach = across + Math.abs(across);
            aside[i] = reach * reach / (16 * half + TINY);
            odd[i] = half - RowGrid.NARROW + Math.abs(half - RowGrid.NARROW);
        }
    }

    private void edges(double centre, double clearRows, int n) {
        for (int i = 0; i < n; i++) {
            double beyond = Math.abs(row[i] - ROUNDER - centre) - clearRows;
            odd[i] += beyond + Math.abs(beyond);
        }
    }

    private void crossings(int n) {
        for (int i = 0; i < n; i++) {
            double last = to[i] - 0.5 + ROUNDER - ROUNDER;
            double first = from[i] - 0.5 + ROUNDER - ROUNDER;
            double more = Math.abs(last - first) + (Math.abs(first) - first);
            cell[i] = last + (odd[i] + more) * FAR;
        }
    }

    private void sides(double[] volumeM3, int n) {
        for (int i = 0; i < n; i++) {
            double litres = volumeM3[i] * M3_L;
            double away = Math.abs(beside[i]);
            left[i] = litres * (0.5 * (away - beside[i]) + aside[i]);
            right[i] = litres * (0.5 * (away + beside[i]) + aside[i]);
        }
    }

    private void centre(double[] volumeM3, int n) {
        for (int i = 0; i < n; i++) {
            middle[i] = volumeM3[i] * M3_L * (1 - Math.abs(beside[i]) - 2 * aside[i]);
        }
    }
}
