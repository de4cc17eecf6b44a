package evenfall.sim.ground;

import evenfall.sim.chance.Chance;
import org.hipparchus.transform.DftNormalization;
import org.hipparchus.transform.FastFourierTransformer;
import org.hipparchus.transform.TransformType;

/**
 * A square, periodic grid of heights made of one wave per grid frequency, read by bilinear
 * interpolation along axes turned against the pass.
 *
 * <p>Turned, so that a straight pass does not come back to where it was when it leaves the tile: it
 * re-enters on another line. Bilinear, because what reads it (tyres, echo sensors, outlets) averages
 * over a cell or does not care for slopes, and four reads of memory cost a third of sixteen. The
 * attenuation of bilinear reading, sinc² along each axis, is known exactly and made up for in the
 * spectrum; what is left is the waves' mirror images above half the grid's frequency.
 *
 * <p>Each wave has the amplitude that the spectrum says and only its phase is drawn. So every seed has
 * the same variance, and figures of one seed can be compared with those of another.
 */
final class Tile {

    /**
     * 1.5 · 2⁵²: a number of this size has no room for a fraction, so adding it rounds to a whole number,
     * which then stands in its lowest bits. Exact and the same everywhere; measured a third faster on
     * JDK 17 than {@code Math.floor} and a cast.
     */
    private static final double ROUNDER = 0x1.8p52;

    private final float[] heights;
    private final int shift;
    private final int mask;
    private final double perStep;
    private final double cos;
    private final double sin;

    private Tile(float[] heights, int sizeLog2, double stepM, double cos, double sin) {
        this.heights = heights;
        this.shift = sizeLog2;
        this.mask = (1 << sizeLog2) - 1;
        this.perStep = 1.0 / stepM;
        this.cos = cos;
        this.sin = sin;
    }

    /**
     * Makes a tile of 2^sizeLog2 points a side with two-dimensional two-sided spectral density
     * {@code densityM · ρ⁻³} (m⁴ at ρ in cycles/m) for ρ from lowest (included) to highest (excluded).
     *
     * @param cos cosine of the tile's turn against the pass
     * @param sin sine of it
     */
    static Tile make(
            int sizeLog2,
            double stepM,
            double densityM,
            double lowestCpm,
            double highestCpm,
            double cos,
            double sin,
            Chance chance) {
        int n = 1 << sizeLog2;
        double[][] re = new double[n][n];
        double[][] im = new double[n][n];
        double binCpm = 1.0 / (n * stepM);
        double[] makeUp = makeUpForBilinear(n);
        int half = n / 2;
        // Half of the plane is drawn, the other half mirrors it so that heights are real numbers. The
        // order of drawing is part of a recorded scenario.
        for (int row = 0; row < half; row++) {
            for (int col = row == 0 ? 1 : 1 - half; col < half; col++) {
                double rho = binCpm * Math.sqrt((double) row * row + (double) col * col);
                if (rho < lowestCpm || rho >= highestCpm) {
                    continue;
                }
                double size = Math.sqrt(densityM / (rho * rho * rho)) * binCpm * makeUp[row] * makeUp[Math.abs(col)];
                double u;
                double v;
                double s;
                do {
                    u = 2.0 * chance.nextDouble() - 1.0;
                    v = 2.0 * chance.nextDouble() - 1.0;
                    s = u * u + v * v;
                } while (s >= 1.0 || s == 0.0);
                double scale = size / Math.sqrt(s);
                re[row][col & (n - 1)] = u * scale;
                im[row][col & (n - 1)] = v * scale;
                re[-row & (n - 1)][-col & (n - 1)] = u * scale;
                im[-row & (n - 1)][-col & (n - 1)] = -v * scale;
            }
        }
        return new Tile(transform(re, im, n), sizeLog2, stepM, cos, sin);
    }

    /** 1/sinc²(k/n) for k = 0 … n/2: what bilinear reading takes away along one axis. */
    private static double[] makeUpForBilinear(int n) {
        double[] makeUp = new double[n / 2 + 1];
        makeUp[0] = 1.0;
        for (int k = 1; k < makeUp.length; k++) {
            double angle = StrictMath.PI * k / n;
            double sinc = StrictMath.sin(angle) / angle;
            makeUp[k] = 1.0 / (sinc * sinc);
        }
        return makeUp;
    }

    private static float[] transform(double[][] re, double[][] im, int n) {
        for (int row = 0; row < n; row++) {
            FastFourierTransformer.transformInPlace(
                    new double[][] {re[row], im[row]}, DftNormalization.STANDARD, TransformType.FORWARD);
        }
        float[] heights = new float[n * n];
        double[][] column = new double[2][n];
        for (int col = 0; col < n; col++) {
            for (int row = 0; row < n; row++) {
                column[0][row] = re[row][col];
                column[1][row] = im[row][col];
            }
            FastFourierTransformer.transformInPlace(column, DftNormalization.STANDARD, TransformType.FORWARD);
            for (int row = 0; row < n; row++) {
                heights[row * n + col] = (float) column[0][row];
            }
        }
        return heights;
    }

    double heightM(double xM, double yM) {
        // Half a cell back, so that rounding to the nearest whole number gives the cell's lower corner. On a
        // corner either neighbour is right, as heights are continuous.
        double u = (xM * cos - yM * sin) * perStep - 0.5;
        double v = (xM * sin + yM * cos) * perStep - 0.5;
        double uRounded = u + ROUNDER;
        double vRounded = v + ROUNDER;
        int uCell = (int) Double.doubleToRawLongBits(uRounded);
        int vCell = (int) Double.doubleToRawLongBits(vRounded);
        double fu = u - (uRounded - ROUNDER) + 0.5;
        double fv = v - (vRounded - ROUNDER) + 0.5;
        int col = uCell & mask;
        int nextCol = (uCell + 1) & mask;
        int row = (vCell & mask) << shift;
        int nextRow = ((vCell + 1) & mask) << shift;
        double near = heights[row + col];
        double far = heights[nextRow + col];
        near += fu * (heights[row + nextCol] - near);
        far += fu * (heights[nextRow + nextCol] - far);
        return near + fv * (far - near);
    }

    /** Adds the heights of many places to what is there: {@link #heightM}, written out for a row. */
    void addM(double[] xM, double[] yM, double[] to, int n) {
        float[] points = heights;
        int last = mask;
        int up = shift;
        double alongCos = cos;
        double alongSin = sin;
        double per = perStep;
        for (int i = 0; i < n; i++) {
            double u = (xM[i] * alongCos - yM[i] * alongSin) * per - 0.5;
            double v = (xM[i] * alongSin + yM[i] * alongCos) * per - 0.5;
            double uRounded = u + ROUNDER;
            double vRounded = v + ROUNDER;
            int uCell = (int) Double.doubleToRawLongBits(uRounded);
            int vCell = (int) Double.doubleToRawLongBits(vRounded);
            double fu = u - (uRounded - ROUNDER) + 0.5;
            double fv = v - (vRounded - ROUNDER) + 0.5;
            int col = uCell & last;
            int nextCol = (uCell + 1) & last;
            int row = (vCell & last) << up;
            int nextRow = ((vCell + 1) & last) << up;
            double near = points[row + col];
            double far = points[nextRow + col];
            near += fu * (points[row + nextCol] - near);
            far += fu * (points[nextRow + nextCol] - far);
            to[i] += near + fv * (far - near);
        }
    }
}
