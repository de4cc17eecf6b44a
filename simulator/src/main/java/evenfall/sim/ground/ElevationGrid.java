package evenfall.sim.ground;

/**
 * Surveyed heights on a square grid of map coordinates, read smoothly between them.
 *
 * <p>Read by cubic convolution (Keys 1981 with a = −1/2): passes through every height, has a continuous slope,
 * and keeps planes exact up to the edge, since the heights go on straight for one cell there. Beyond the
 * middles of the outermost cells the height stays what it is at the edge.
 */
public final class ElevationGrid {

    private final int columns;
    private final int rows;
    private final double westM;
    private final double southM;
    private final double cellM;
    private final int stride;
    private final double[] heights;

    /**
     * @param columns cells from west to east, at least 2
     * @param rows cells from south to north, at least 2
     * @param westM easting of the middle of the westernmost cells, m
     * @param southM northing of the middle of the southernmost cells, m
     * @param cellM side of a cell, m, above 0
     * @param southFirstM heights, m, row by row from the south, each from west to east
     * @throws IllegalArgumentException when the numbers do not fit together
     */
    public ElevationGrid(int columns, int rows, double westM, double southM, double cellM, double[] southFirstM) {
        if (columns < 2 || rows < 2 || southFirstM.length != (long) columns * rows) {
            throw new IllegalArgumentException("a grid of " + columns + " by " + rows
                    + " cells, at least 2 by 2, does not have " + southFirstM.length + " heights");
        }
        Smooth.requirePositive(cellM, "side of a cell, m,");
        this.columns = columns;
        this.rows = rows;
        this.westM = westM;
        this.southM = southM;
        this.cellM = cellM;
        this.stride = columns + 2;
        this.heights = new double[stride * (rows + 2)];
        for (int row = 0; row < rows; row++) {
            int at = (row + 1) * stride + 1;
            System.arraycopy(southFirstM, row * columns, heights, at, columns);
            heights[at - 1] = 2 * heights[at] - heights[at + 1];
            heights[at + columns] = 2 * heights[at + columns - 1] - heights[at + columns - 2];
        }
        int last = (rows + 1) * stride;
        for (int column = 0; column < stride; column++) {
            heights[column] = 2 * heights[stride + column] - heights[2 * stride + column];
            heights[last + column] = 2 * heights[last - stride + column] - heights[last - 2 * stride + column];
        }
    }

    /** Height at a place on the map, m. */
    public double elevationM(double eastM, double northM) {
        double u = Math.max(0, Math.min(columns - 1, (eastM - westM) / cellM));
        double v = Math.max(0, Math.min(rows - 1, (northM - southM) / cellM));
        int column = Math.min(columns - 2, (int) u);
        int row = Math.min(rows - 2, (int) v);
        double fu = u - column;
        double fv = v - row;
        // The padding shifts by one, so that the corner before the cell stands at (row, column).
        int at = row * stride + column;
        return weightBefore(fv) * alongM(at, fu)
                + weightNear(fv) * alongM(at + stride, fu)
                + weightNear(1 - fv) * alongM(at + 2 * stride, fu)
                + weightBefore(1 - fv) * alongM(at + 3 * stride, fu);
    }

    private double alongM(int at, double f) {
        return weightBefore(f) * heights[at]
                + weightNear(f) * heights[at + 1]
                + weightNear(1 - f) * heights[at + 2]
                + weightBefore(1 - f) * heights[at + 3];
    }

    /** Weight of the height one cell before the near one. */
    private static double weightBefore(double f) {
        double left = 1 - f;
        return -0.5 * f * left * left;
    }

    /** Weight of the near height. */
    private static double weightNear(double f) {
        return 1 + f * f * (1.5 * f - 2.5);
    }

    /** Whether a place on the map lies within the middles of the outermost cells. */
    public boolean covers(double eastM, double northM) {
        double u = (eastM - westM) / cellM;
        double v = (northM - southM) / cellM;
        return u >= 0 && u <= columns - 1 && v >= 0 && v <= rows - 1;
    }

    /**
     * The grid as ground of a field: heights over the place where the first pass begins.
     *
     * @param eastM easting of that place, m
     * @param northM northing of that place, m
     * @param bearingRad bearing of the first pass, rad from grid north to the east
     */
    public Ground from(double eastM, double northM, double bearingRad) {
        double cos = StrictMath.cos(bearingRad);
        double sin = StrictMath.sin(bearingRad);
        double datumM = elevationM(eastM, northM);
        return (xM, yM) -> elevationM(eastM + xM * sin + yM * cos, northM + xM * cos - yM * sin) - datumM;
    }

    public int columns() {
        return columns;
    }

    public int rows() {
        return rows;
    }

    /** Easting of the middle of the westernmost cells, m. */
    public double westM() {
        return westM;
    }

    /** Northing of the middle of the southernmost cells, m. */
    public double southM() {
        return southM;
    }

    /** Side of a cell, m. */
    public double cellM() {
        return cellM;
    }
}
