package evenfall.sim.world;

import evenfall.rig.BoomLayout;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The truth ledger: litres on each own row in each cell of two metres along the pass.
 *
 * <p>The raster is rows × cells; cell c covers {@code [cellFromM(c), cellFromM(c) + 2 m)} of the ground, whenever it was that liquid
 * fell there. What leaves an outlet during a step falls evenly over the distance driven meanwhile. The adjoining passes are taken to
 * mirror this one, so that the outer rows are fed as in a field that is driven to and fro.
 *
 * <p>Nothing is lost: {@code Σ cells = left outlets − on neighbours' rows + from neighbours' lines}. Where the rows lie the same way
 * about both edges of the boom (as at 7.5 in rows, phase 0.5, under whole multiples), the last two are equal.
 */
public final class RowLedger {
    /** Length of a cell, m. */
    public static final double CELL_M = 2;

    /** Cells before the start, into which a stream thrown to the rear may fall. */
    private static final int CELLS_BEFORE = 4;

    /** A cell counts as complete when the boom has passed it by this much at both ends, m: further than any stream is carried. */
    private static final double MARGIN_M = 4;

    private static final double M3_L = 1000;

    private final RowGrid grid;
    private final List<double[]> cells = new ArrayList<>();
    private double reachedM;
    private double leftOutletsL;
    private double onNeighboursL;
    private double fromNeighboursL;

    RowLedger(BoomLayout boom) {
        grid = new RowGrid(boom);
    }

    /**
     * Lets one stream of one outlet fall.
     *
     * @param fromM where its first drop falls, m along the pass
     * @param toM where its last drop falls, m along the pass
     * @param rightM m right of the centre line
     * @param volumeM3 how much
     */
    void fall(double fromM, double toM, double rightM, double volumeM3) {
        double litres = volumeM3 * M3_L;
        leftOutletsL += litres;
        double low = Math.min(fromM, toM) / CELL_M;
        double high = Math.max(fromM, toM) / CELL_M;
        int first = (int) Math.floor(low);
        int last = (int) Math.floor(high);
        if (first == last) {
            put(first, rightM, litres);
            return;
        }
        double left = litres;
        for (int c = first; c < last; c++) {
            double part = litres * (Math.min(high, c + 1.0) - Math.max(low, c)) / (high - low);
            put(c, rightM, part);
            left -= part;
        }
        put(last, rightM, left);
    }

    private void put(int index, double rightM, double litres) {
        double[] into = cell(index);
        onNeighboursL += litres - grid.add(into, rightM, litres);
        fromNeighboursL += grid.addMirrored(into, rightM, litres);
    }

    private double[] cell(int index) {
        int at = Math.max(0, index + CELLS_BEFORE);
        while (at >= cells.size()) {
            cells.add(new double[grid.count()]);
        }
        return cells.get(at);
    }

    /** The boom has come so far. */
    void reached(double xM) {
        reachedM = xM;
    }

    /** How many own rows there are. */
    public int rows() {
        return grid.count();
    }

    /** Place of a row, m right of the centre line. */
    public double rowRightM(int row) {
        return grid.rightM(row);
    }

    /** How many cells have been touched, those before the start among them. */
    public int cells() {
        return cells.size();
    }

    /** Where a cell begins, m along the pass; the first few begin before the start. */
    public double cellFromM(int cell) {
        return (cell - CELLS_BEFORE) * CELL_M;
    }

    /** Litres on a row in a cell. */
    public double litres(int cell, int row) {
        return cells.get(cell)[row];
    }

    /** Whether all that will fall in a cell has fallen, and the boom was spraying over the whole of it if it sprayed at all. */
    public boolean isComplete(int cell) {
        return cellFromM(cell) >= MARGIN_M && cellFromM(cell) + CELL_M <= reachedM - MARGIN_M;
    }

    /** The rows of a cell; empty where nothing fell. */
    public Optional<RowFigures> figures(int cell) {
        return RowFigures.of(cells.get(cell), 0, grid.count());
    }

    /** Sum of all cells, litres. */
    public double totalL() {
        double sum = 0;
        for (double[] cell : cells) {
            for (double litres : cell) {
                sum += litres;
            }
        }
        return sum;
    }

    /** What left the outlets, litres. */
    public double leftOutletsL() {
        return leftOutletsL;
    }

    /** What this pass put on rows beyond its own width, litres. */
    public double onNeighboursL() {
        return onNeighboursL;
    }

    /** What the neighbours' passes put on own rows, litres. */
    public double fromNeighboursL() {
        return fromNeighboursL;
    }
}
