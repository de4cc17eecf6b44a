package evenfall.sim.ground;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.hipparchus.analysis.interpolation.BicubicInterpolatingFunction;
import org.hipparchus.analysis.interpolation.BicubicInterpolator;
import org.junit.jupiter.api.Test;

class ElevationGridTest {

    private static final int COLUMNS = 9;
    private static final int ROWS = 7;

    private static double[] random(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] heights = new double[COLUMNS * ROWS];
        for (int i = 0; i < heights.length; i++) {
            heights[i] = 300 + 4 * random.nextDouble();
        }
        return heights;
    }

    @Test
    void betweenInnerCellsItIsTheBicubicThatHipparchusMakesOfTheSameHeights() {
        double[] heights = random(3);
        ElevationGrid grid = new ElevationGrid(COLUMNS, ROWS, 1000, 2000, 5, heights);
        double[] east = new double[COLUMNS];
        double[] north = new double[ROWS];
        double[][] byColumn = new double[COLUMNS][ROWS];
        for (int c = 0; c < COLUMNS; c++) {
            east[c] = 1000 + 5 * c;
            for (int r = 0; r < ROWS; r++) {
                north[r] = 2000 + 5 * r;
                byColumn[c][r] = heights[r * COLUMNS + c];
            }
        }
        BicubicInterpolatingFunction reference = new BicubicInterpolator().interpolate(east, north, byColumn);
        SplittableRandom random = new SplittableRandom(5);
        for (int i = 0; i < 500; i++) {
            double e = 1005 + 30 * random.nextDouble();
            double n = 2005 + 20 * random.nextDouble();
            assertThat(grid.elevationM(e, n))
                    .as("seed 5, %f east %f north", e, n)
                    .isCloseTo(reference.value(e, n), within(1e-9));
        }
    }

    @Test
    void itPassesThroughEveryHeightAndKeepsPlanesToTheEdge() {
        double[] heights = random(4);
        ElevationGrid grid = new ElevationGrid(COLUMNS, ROWS, 0, 0, 2, heights);
        double[] plane = new double[COLUMNS * ROWS];
        for (int i = 0; i < plane.length; i++) {
            assertThat(grid.elevationM(2 * (i % COLUMNS), 2.0 * (i / COLUMNS))).isCloseTo(heights[i], within(1e-12));
            plane[i] = 7 + 0.03 * 2 * (i % COLUMNS) - 0.05 * 2 * (i / COLUMNS);
        }
        ElevationGrid slope = new ElevationGrid(COLUMNS, ROWS, 0, 0, 2, plane);
        for (double e = 0; e <= 16; e += 0.37) {
            for (double n = 0; n <= 12; n += 0.41) {
                assertThat(slope.elevationM(e, n)).isCloseTo(7 + 0.03 * e - 0.05 * n, within(1e-12));
            }
        }
        assertThat(slope.elevationM(-30, 6)).as("level beyond the edge").isCloseTo(7 - 0.3, within(1e-12));
        assertThat(slope.covers(-0.1, 6)).isFalse();
        assertThat(slope.covers(16, 12)).isTrue();
    }

    @Test
    void itHasNoKinks() {
        ElevationGrid grid = new ElevationGrid(COLUMNS, ROWS, 0, 0, 2, random(6));
        double step = 1e-5;
        for (int c = 1; c < COLUMNS - 1; c++) {
            double before = grid.elevationM(2 * c, 5.3) - grid.elevationM(2 * c - step, 5.3);
            double after = grid.elevationM(2 * c + step, 5.3) - grid.elevationM(2 * c, 5.3);
            assertThat(after / step).isCloseTo(before / step, within(1e-3));
        }
    }

    @Test
    void placedInAFieldForwardFollowsTheBearing() {
        // Rises 2 % to the north and 1 % to the east; a pass that starts at (8, 6) and goes due east.
        double[] plane = new double[COLUMNS * ROWS];
        for (int i = 0; i < plane.length; i++) {
            plane[i] = 500 + 0.01 * 2 * (i % COLUMNS) + 0.02 * 2 * (i / COLUMNS);
        }
        ElevationGrid grid = new ElevationGrid(COLUMNS, ROWS, 0, 0, 2, plane);
        Ground east = grid.from(8, 6, Math.PI / 2);
        assertThat(east.heightM(0, 0)).isZero();
        assertThat(east.heightM(3, 0)).isCloseTo(0.03, within(1e-9));
        assertThat(east.heightM(0, 3)).as("to the right is south").isCloseTo(-0.06, within(1e-9));
        Ground north = grid.from(8, 6, 0);
        assertThat(north.heightM(3, 2)).isCloseTo(0.06 + 0.02, within(1e-9));
    }

    @Test
    void numbersThatDoNotFitAreRefused() {
        assertThatThrownBy(() -> new ElevationGrid(3, 2, 0, 0, 1, new double[5]))
                .hasMessage("a grid of 3 by 2 cells, at least 2 by 2, does not have 5 heights");
        assertThatThrownBy(() -> new ElevationGrid(2, 2, 0, 0, 0, new double[4]))
                .hasMessage("side of a cell, m, must be above 0, not 0.0");
    }
}
