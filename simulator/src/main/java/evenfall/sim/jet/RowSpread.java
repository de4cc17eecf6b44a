package evenfall.sim.jet;

/**
 * How a stream of some width is shared among crop rows.
 *
 * <p>A line between two rows feeds both by nearness, {@code hat(x) = max(0, 1 − |x|)} of its distance in row spacings (a band
 * between two rows feeds both: common practice, no source; the hat is our model of it). A stream that is spread is taken to lie
 * evenly over a band of the same standard deviation, half as wide as {@code √3 σ}, and the hat is averaged over that band. The
 * shares sum to 1 for any place and width, so nothing is lost; without spread the plain hat is left.
 */
public final class RowSpread {
    /** Half the width of an even band over its standard deviation. */
    private static final double HALF_OVER_SIGMA = Math.sqrt(3);

    /** A stream wider than this many rows to either side is cut off there: it is drift, not a stream. */
    private static final int WIDEST_ROWS = 6;

    /** Most rows that one stream can reach. */
    public static final int MOST_ROWS = 2 * WIDEST_ROWS + 3;

    private RowSpread() {}

    /** First row that a stream feeds, and with it the row of {@code into[0]} of {@link #shares}. */
    public static int firstRow(double atRows, double sigmaRows) {
        return (int) Math.floor(atRows - half(sigmaRows));
    }

    /**
     * Shares of the rows from {@link #firstRow} on.
     *
     * @param atRows place of the stream in row spacings; row j lies at j
     * @param sigmaRows its standard deviation in row spacings, 0 or more; above 6/√3 it counts as that
     * @param into takes the shares, {@link #MOST_ROWS} long
     * @return how many rows were written, at least 2; their shares sum to 1
     */
    public static int shares(double atRows, double sigmaRows, double[] into) {
        double half = half(sigmaRows);
        double from = atRows - half;
        double to = atRows + half;
        int first = (int) Math.floor(from);
        int inside = (int) Math.floor(to) - first;
        if (inside == 0) {
            into[1] = atRows - first;
            into[0] = 1 - into[1];
            return 2;
        }
        double quarter = 0.25 / half;
        if (inside == 1) {
            double leftOfRow = first + 1 - from;
            double rightOfRow = to - first - 1;
            into[0] = leftOfRow * leftOfRow * quarter;
            into[2] = rightOfRow * rightOfRow * quarter;
            into[1] = 1 - into[0] - into[2];
            return 3;
        }
        return wide(atRows - first, half, quarter, inside + 1, into);
    }

    private static int wide(double at, double half, double quarter, int last, double[] into) {
        double before = ramp(at + 1, half, quarter);
        double here = ramp(at, half, quarter);
        double sum = 0;
        for (int j = 0; j < last; j++) {
            double after = ramp(at - j - 1, half, quarter);
            into[j] = before - 2 * here + after;
            sum += into[j];
            before = here;
            here = after;
        }
        double rest = 1 - sum;
        into[last] = rest > 0 ? rest : 0;
        return last + 1;
    }

    private static double half(double sigmaRows) {
        double half = HALF_OVER_SIGMA * sigmaRows;
        return half < WIDEST_ROWS ? half : WIDEST_ROWS;
    }

    /** {@code max(0, x)} averaged over a band about x. */
    private static double ramp(double x, double half, double quarter) {
        if (x >= half) {
            return x;
        }
        return x <= -half ? 0 : (x + half) * (x + half) * quarter;
    }
}
