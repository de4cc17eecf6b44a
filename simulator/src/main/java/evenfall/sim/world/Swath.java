package evenfall.sim.world;

import evenfall.sim.jet.RowSpread;
import java.util.Arrays;

/**
 * One stream of all outlets on its way along the field: what it has put on three rows since it last came to other rows or into
 * another cell.
 *
 * <p>From one step to the next a line moves by millimetres. So its shares of the rows are summed up line by line, in loops over plain
 * arrays that the compiler turns into vector instructions; only a line that comes to other rows, crosses into another cell, is wide or
 * lies near the boom's edge is written to the {@link RowLedger} itself. Nothing but the order of sums is different from writing each
 * line at each step, and a step costs a third.
 *
 * <p>The loops are short on purpose: the compiler (JDK 17) leaves long ones as they are.
 *
 * <p>How a stream is shared: the hat is straight but at its three corners, so a band that is spread evenly over {@code ±h} about its
 * middle (h rows, the same standard deviation as the stream) gives what its middle line gives, except where it lies across a row, d
 * from its middle: there the row gets {@code (h − d)²/2h} of it less and either neighbour half of that more. This is
 * {@link RowSpread}, written out for bands of up to half a row to either side.
 */
final class Swath {
    /** 1.5 · 2⁵²: adding it rounds to a whole number, as in the ground's tiles. */
    private static final double ROUNDER = 0x1.8p52;

    /** Keeps a quotient finite for a line without spread, which has nothing to lose by it. */
    private static final double TINY = 1e-12;

    private static final double M3_L = 1000;

    private final RowGrid grid;

    // By outlet, since its line last changed: the middle one of its three rows, its cell, and litres on the three.
    private final double[] row;
    private final double[] cell;
    private final double[] left;
    private final double[] middle;
    private final double[] right;

    // By outlet, of this step.
    private final double[] rowNow;
    private final double[] cellNow;
    private final double[] beside;
    private final double[] aside;
    private final double[] toLeft;
    private final double[] toMiddle;
    private final double[] toRight;
    private final double[] to;
    private final double[] from;
    private final double[] change;
    private final int[] changed;

    Swath(RowGrid grid, int outlets) {
        this.grid = grid;
        row = new double[outlets];
        cell = new double[outlets];
        left = new double[outlets];
        middle = new double[outlets];
        right = new double[outlets];
        rowNow = new double[outlets];
        cellNow = new double[outlets];
        beside = new double[outlets];
        aside = new double[outlets];
        toLeft = new double[outlets];
        toMiddle = new double[outlets];
        toRight = new double[outlets];
        to = new double[outlets];
        from = new double[outlets];
        change = new double[outlets];
        changed = new int[outlets];
        Arrays.fill(row, Double.NaN);
    }

    /**
     * Takes one step of all lines. Those that have changed are left to the caller, who {@linkplain #leave leaves} their old place and
     * writes them himself.
     *
     * @return how many have changed; see {@link #changed}
     */
    int take(Falls falls, int stream, double perCell, double cellsBefore) {
        double[] volumeM3 = falls.lines.quantity()[stream];
        rows(falls.lines.rightM()[stream], grid.perRow(), grid.origin(), rowNow, beside);
        along(falls.outletM, falls.lines.backM()[stream], falls.goneM, perCell, cellsBefore, to, from);
        spread(falls.lines.sigmaM()[stream], grid.halfRowsPerSigma(), beside, aside, change);
        edges(rowNow, grid.origin(), grid.clearRows(), change);
        moves(rowNow, row, change);
        crossings(to, from, cell, cellNow, change);
        sides(volumeM3, beside, aside, toLeft, toRight);
        centre(volumeM3, beside, aside, toMiddle);
        int count = 0;
        for (int i = 0; i < change.length; i++) {
            if (change[i] != 0) {
                changed[count++] = i;
                toLeft[i] = 0;
                toMiddle[i] = 0;
                toRight[i] = 0;
            }
        }
        add(toLeft, left);
        add(toMiddle, middle);
        add(toRight, right);
        return count;
    }

    /** An outlet whose line has changed. */
    int changed(int n) {
        return changed[n];
    }

    /** Where a line's last drop falls, in cells. */
    double to(int outlet) {
        return to[outlet];
    }

    /** Where its first drop falls, in cells. */
    double from(int outlet) {
        return from[outlet];
    }

    /** Whether a line has put down anything since it last changed. */
    boolean holds(int outlet) {
        return middle[outlet] != 0 || left[outlet] != 0 || right[outlet] != 0;
    }

    /** The cell that a line has been in. */
    int cell(int outlet) {
        return (int) cell[outlet];
    }

    /** Writes down what a line holds. */
    void leave(int outlet, double[] strip) {
        int at = (int) row[outlet];
        strip[at - 1] += left[outlet];
        strip[at] += middle[outlet];
        strip[at + 1] += right[outlet];
        left[outlet] = 0;
        middle[outlet] = 0;
        right[outlet] = 0;
    }

    /** From the next step on a line is where it is now. */
    void settle(int outlet) {
        row[outlet] = rowNow[outlet];
        cell[outlet] = cellNow[outlet];
    }

    private static void rows(double[] rightM, double perRow, double origin, double[] row, double[] beside) {
        for (int i = 0; i < row.length; i++) {
            double at = rightM[i] * perRow + origin;
            double nearest = at + ROUNDER - ROUNDER;
            row[i] = nearest;
            beside[i] = at - nearest;
        }
    }

    private static void along(
            double[] outletM,
            double[] backM,
            double[] goneM,
            double perCell,
            double before,
            double[] to,
            double[] from) {
        for (int i = 0; i < to.length; i++) {
            double last = (outletM[i] - backM[i]) * perCell + before;
            to[i] = last;
            from[i] = last - goneM[i] * perCell;
        }
    }

    /** What either neighbour gets more where a band lies across a row; and a change above 0 where it is wide. */
    private static void spread(
            double[] sigmaM, double halfRowsPerSigma, double[] beside, double[] aside, double[] change) {
        for (int i = 0; i < aside.length; i++) {
            double half = sigmaM[i] * halfRowsPerSigma;
            double across = half - Math.abs(beside[i]);
            // Twice the positive part.
            double reach = across + Math.abs(across);
            aside[i] = reach * reach / (16 * half + TINY);
            change[i] = half - RowGrid.NARROW + Math.abs(half - RowGrid.NARROW);
        }
    }

    private static void edges(double[] row, double middle, double clearRows, double[] change) {
        for (int i = 0; i < change.length; i++) {
            double beyond = Math.abs(row[i] - middle) - clearRows;
            change[i] += beyond + Math.abs(beyond);
        }
    }

    private static void moves(double[] now, double[] before, double[] change) {
        for (int i = 0; i < change.length; i++) {
            change[i] += Math.abs(now[i] - before[i]);
        }
    }

    private static void crossings(double[] to, double[] from, double[] before, double[] now, double[] change) {
        for (int i = 0; i < change.length; i++) {
            double last = to[i] - 0.5 + ROUNDER - ROUNDER;
            double first = from[i] - 0.5 + ROUNDER - ROUNDER;
            now[i] = last;
            change[i] += Math.abs(last - before[i]) + Math.abs(first - before[i]);
        }
    }

    private static void sides(double[] volumeM3, double[] beside, double[] aside, double[] left, double[] right) {
        for (int i = 0; i < left.length; i++) {
            double litres = volumeM3[i] * M3_L;
            double away = Math.abs(beside[i]);
            left[i] = litres * (0.5 * (away - beside[i]) + aside[i]);
            right[i] = litres * (0.5 * (away + beside[i]) + aside[i]);
        }
    }

    private static void centre(double[] volumeM3, double[] beside, double[] aside, double[] middle) {
        for (int i = 0; i < middle.length; i++) {
            middle[i] = volumeM3[i] * M3_L * (1 - Math.abs(beside[i]) - 2 * aside[i]);
        }
    }

    private static void add(double[] what, double[] to) {
        for (int i = 0; i < to.length; i++) {
            to[i] += what[i];
        }
    }
}
