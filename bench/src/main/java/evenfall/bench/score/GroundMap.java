package evenfall.bench.score;

import evenfall.sim.world.RowLedger;

/**
 * What each row got on each stretch of the pass, over what the rows of the whole pass got on average: 1 is the mean, 0 is nothing.
 * Complete cells only.
 */
public final class GroundMap {
    static final GroundMap NONE = new GroundMap(0, new double[0], new double[0], new float[0]);

    private final int rows;
    private final double[] cellFromM;
    private final double[] rowRightM;
    private final float[] share;

    private GroundMap(int rows, double[] cellFromM, double[] rowRightM, float[] share) {
        this.rows = rows;
        this.cellFromM = cellFromM;
        this.rowRightM = rowRightM;
        this.share = share;
    }

    /**
     * A map that was kept.
     *
     * @param cellFromM where each cell begins along the pass, m
     * @param rowRightM place of each row, m right of the centre line
     * @param share what each row got, row by row within each cell
     * @throws IllegalArgumentException where there is not one share for each row of each cell
     */
    public static GroundMap kept(double[] cellFromM, double[] rowRightM, float[] share) {
        if (share.length != cellFromM.length * rowRightM.length) {
            throw new IllegalArgumentException(
                    share.length + " shares for " + cellFromM.length + " cells of " + rowRightM.length + " rows");
        }
        return new GroundMap(rowRightM.length, cellFromM.clone(), rowRightM.clone(), share.clone());
    }

    static GroundMap of(RowLedger ledger) {
        int rows = ledger.rows();
        int complete = 0;
        double sumL = 0;
        for (int cell = 0; cell < ledger.cells(); cell++) {
            if (ledger.isComplete(cell)) {
                complete++;
                for (int row = 0; row < rows; row++) {
                    sumL += ledger.litres(cell, row);
                }
            }
        }
        double meanL = sumL / Math.max(1, complete * rows);
        double[] from = new double[complete];
        float[] share = new float[complete * rows];
        int next = 0;
        for (int cell = 0; cell < ledger.cells(); cell++) {
            if (ledger.isComplete(cell)) {
                from[next] = ledger.cellFromM(cell);
                for (int row = 0; row < rows && meanL > 0; row++) {
                    share[next * rows + row] = (float) (ledger.litres(cell, row) / meanL);
                }
                next++;
            }
        }
        double[] right = new double[rows];
        for (int row = 0; row < rows; row++) {
            right[row] = ledger.rowRightM(row);
        }
        return new GroundMap(rows, from, right, share);
    }

    public int rows() {
        return rows;
    }

    public int cells() {
        return cellFromM.length;
    }

    /** Where a cell begins along the pass, m. */
    public double cellFromM(int cell) {
        return cellFromM[cell];
    }

    /** Place of a row, m right of the boom's centre line. */
    public double rowRightM(int row) {
        return rowRightM[row];
    }

    /** What the row got in the cell over the mean of the pass, a ratio. */
    public double share(int cell, int row) {
        return share[cell * rows + row];
    }
}
