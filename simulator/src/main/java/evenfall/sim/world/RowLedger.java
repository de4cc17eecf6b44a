package evenfall.sim.world;

import evenfall.rig.BoomLayout;
import java.util.Arrays;
import java.util.Optional;

/**
 * The truth ledger: litres, and kilograms of nitrogen, on each own row in each cell of two metres along the way driven.
 *
 * <p>The raster is rows × cells; cell c covers {@code [cellFromM(c), cellFromM(c) + 2 m)} of the way, whenever it was that liquid
 * fell there. What leaves an outlet during a step falls evenly over the distance it goes meanwhile. The adjoining passes are taken to
 * mirror this one, so that the outer rows are fed as in a field that is driven to and fro. In a bend rows and cells bend with the
 * machine.
 *
 * <p>Nothing is lost: {@code out of tank = left outlets + leaked before them + more in the lines}, and {@code Σ cells = left outlets − on neighbours' rows + from neighbours' lines}, where the first is counted as it
 * leaves, before it is shared among streams, and the others where they lie. Where the rows lie the same way about both edges of the
 * boom (as at 7.5 in rows, phase 0.5, under whole multiples), the last two are equal.
 */
public final class RowLedger {
    /** Length of a cell, m. */
    public static final double CELL_M = 2;

    /** Cells before the start, into which a stream thrown to the rear may fall. */
    private static final int CELLS_BEFORE = 4;

    /** A cell counts as complete when the boom has passed it by this much at both ends, m: further than any stream is carried. */
    private static final double MARGIN_M = 4;

    private static final double PER_CELL = 1 / CELL_M;
    private static final double M3_L = 1000;

    private final RowGrid grid;
    private final double nitrogenKgpL;
    private final Swath swath;
    private double[][] cells = new double[64][];
    private int touched;
    private double reachedM;
    /** What left each outlet in its streams: summed up apart, which the compiler can do for several at once. */
    private final double[] leftM3;

    private double drippedM3;
    private double fromNeighboursL;
    private double outOfTankL;
    private double beforeOutletsL;
    private double inLinesL;

    /** @param places most lines of a stream that fall at once: steps × outlets */
    RowLedger(BoomLayout boom, int places, double nitrogenKgpM3) {
        grid = new RowGrid(boom);
        swath = new Swath(grid, places);
        leftM3 = new double[boom.outlets()];
        nitrogenKgpL = nitrogenKgpM3 / M3_L;
    }

    /**
     * Lets the streams of a boom fall.
     *
     * @param falls where they fall and how much
     */
    void fall(Falls falls) {
        for (int step = 0; step < falls.steps; step++) {
            leave(falls.outletM3, step * leftM3.length);
        }
        for (int k = 0; k < falls.lines.streams(); k++) {
            swath.take(falls, k, PER_CELL, CELLS_BEFORE);
            share(falls, k);
        }
        if (falls.leaks) {
            drippedM3 += drip(falls);
        }
    }

    private void leave(double[] outletM3, int from) {
        for (int i = 0; i < leftM3.length; i++) {
            // The positive part: a shut outlet gives nothing.
            leftM3[i] += 0.5 * (outletM3[from + i] + Math.abs(outletM3[from + i]));
        }
    }

    private void share(Falls falls, int stream) {
        int end = falls.places();
        int i = 0;
        while (i < end) {
            if (swath.isPlain(i)) {
                int cell = swath.cell(i);
                i = swath.put(strip(cell), cell, i, end);
            } else {
                if (swath.isNarrow(i)) {
                    shareOver(swath.from(i), swath.to(i), i);
                } else {
                    shareAnywhere(falls, stream, i);
                }
                i++;
            }
        }
    }

    /** A narrow line over the border between cells, or on the first ground, which also takes what falls before it. */
    private void shareOver(double from, double to, int i) {
        double low = Math.max(0, Math.min(from, to));
        double high = Math.max(0, Math.max(from, to));
        int last = (int) high;
        double left = 1;
        for (int c = (int) low; c < last; c++) {
            double part = (Math.min(high, c + 1.0) - Math.max(low, c)) / (high - low);
            swath.putPart(strip(c), i, part);
            left -= part;
        }
        swath.putPart(strip(last), i, left);
    }

    private void shareAnywhere(Falls falls, int stream, int i) {
        double volumeM3 = falls.lines.quantity()[stream][i];
        if (volumeM3 > 0) {
            double rightM = falls.lines.rightM()[stream][i];
            fallOver(swath.from(i), swath.to(i), rightM, falls.lines.sigmaM()[stream][i], volumeM3 * M3_L);
        }
    }

    /** What leaks falls straight down; says how much, m³. */
    private double drip(Falls falls) {
        double sumM3 = 0;
        for (int i = 0; i < falls.places(); i++) {
            double dropM3 = falls.leakedM3[i];
            if (dropM3 > 0) {
                sumM3 += dropM3;
                double to = falls.outletM[i] * PER_CELL + CELLS_BEFORE;
                fallOver(to - falls.goneM[i] * PER_CELL, to, falls.outletRightM[i], 0, dropM3 * M3_L);
            }
        }
        return sumM3;
    }

    /** A stream that falls anywhere, over the border between cells, or on the first ground, which also takes what falls before it. */
    private void fallOver(double from, double to, double rightM, double sigmaM, double litres) {
        if (from >= 0 && (int) from == (int) to) {
            put((int) to, rightM, sigmaM, litres);
            return;
        }
        double low = Math.max(0, Math.min(from, to));
        double high = Math.max(0, Math.max(from, to));
        int first = (int) low;
        int last = (int) high;
        double left = litres;
        for (int c = first; c < last; c++) {
            double part = litres * (Math.min(high, c + 1.0) - Math.max(low, c)) / (high - low);
            put(c, rightM, sigmaM, part);
            left -= part;
        }
        put(last, rightM, sigmaM, left);
    }

    private void put(int cell, double rightM, double sigmaM, double litres) {
        double[] strip = strip(cell);
        grid.add(strip, rightM, sigmaM, litres);
        fromNeighboursL += grid.addMirrored(strip, rightM, sigmaM, litres);
    }

    private double[] strip(int cell) {
        if (cell >= cells.length) {
            cells = Arrays.copyOf(cells, Math.max(2 * cells.length, cell + 1));
        }
        while (touched <= cell) {
            cells[touched++] = new double[grid.length()];
        }
        return cells[cell];
    }

    /** The boom has come so far. */
    void reached(double xM) {
        reachedM = xM;
    }

    /**
     * The run has ended; only now can the ledger be read.
     *
     * @param outOfTankM3 what has left the tank
     * @param beforeOutletsM3 what leaked before the outlets
     * @param inLinesM3 what the lines hold more than at the start
     */
    void close(double outOfTankM3, double beforeOutletsM3, double inLinesM3) {
        outOfTankL = outOfTankM3 * M3_L;
        beforeOutletsL = beforeOutletsM3 * M3_L;
        inLinesL = inLinesM3 * M3_L;
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
        return touched;
    }

    /** Where a cell begins, m along the way; the first few begin before the start. */
    public double cellFromM(int cell) {
        return (cell - CELLS_BEFORE) * CELL_M;
    }

    /** Litres on a row in a cell. */
    public double litres(int cell, int row) {
        return cell(cell)[grid.margin() + row];
    }

    /** Kilograms of nitrogen on a row in a cell, by what is really in the tank. */
    public double nitrogenKg(int cell, int row) {
        return litres(cell, row) * nitrogenKgpL;
    }

    /** Whether all that will fall in a cell has fallen, and the boom was spraying over the whole of it if it sprayed at all. */
    public boolean isComplete(int cell) {
        return cellFromM(cell) >= MARGIN_M && cellFromM(cell) + CELL_M <= reachedM - MARGIN_M;
    }

    /** The rows of a cell; empty where nothing fell. */
    public Optional<RowFigures> figures(int cell) {
        return RowFigures.of(cell(cell), grid.margin(), grid.margin() + grid.count());
    }

    private double[] cell(int cell) {
        if (cell >= touched) {
            throw new IndexOutOfBoundsException("cell " + cell + " of " + touched);
        }
        return cells[cell];
    }

    /** Sum of all cells, litres. */
    public double totalL() {
        return sum(grid.margin(), grid.margin() + grid.count());
    }

    /** Sum of all cells, kg of nitrogen. */
    public double totalNitrogenKg() {
        return totalL() * nitrogenKgpL;
    }

    private double sum(int from, int to) {
        double sum = 0;
        for (int cell = 0; cell < touched; cell++) {
            double inCell = 0;
            for (int place = from; place < to; place++) {
                inCell += cells[cell][place];
            }
            sum += inCell;
        }
        return sum;
    }

    /** What left the outlets, litres. */
    public double leftOutletsL() {
        double sumM3 = drippedM3;
        for (double eachM3 : leftM3) {
            sumM3 += eachM3;
        }
        return sumM3 * M3_L;
    }

    /** What left the tank, litres: {@code left outlets + leaked before them + more in the lines}. Known when the run has ended. */
    public double outOfTankL() {
        return outOfTankL;
    }

    /** What leaked from the lines before the outlets and is on no row, litres. Known when the run has ended. */
    public double beforeOutletsL() {
        return beforeOutletsL;
    }

    /** What the lines hold more than at the start, litres; negative when they have drained. Known when the run has ended. */
    public double inLinesL() {
        return inLinesL;
    }

    /** What this pass put on rows beyond its own width, litres. */
    public double onNeighboursL() {
        return sum(0, grid.margin()) + sum(grid.margin() + grid.count(), grid.length());
    }

    /** What the neighbours' passes put on own rows, litres. */
    public double fromNeighboursL() {
        return fromNeighboursL;
    }
}
