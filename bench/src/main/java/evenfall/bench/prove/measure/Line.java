package evenfall.bench.prove.measure;

import org.hipparchus.stat.regression.SimpleRegression;

/**
 * A straight line through points by least squares, and how sure it is (GUM H.3).
 *
 * @param n points
 * @param intercept at x = 0
 * @param slope per unit of x
 * @param interceptStandard standard uncertainty of the intercept
 * @param slopeStandard standard uncertainty of the slope
 * @param residualSd standard deviation of the points around the line, with n − 2
 * @param xMean mean of x
 * @param xSquares sum of squares of x around its mean
 * @param worstResidual greatest distance of a point from the line, without sign
 */
public record Line(
        int n,
        double intercept,
        double slope,
        double interceptStandard,
        double slopeStandard,
        double residualSd,
        double xMean,
        double xSquares,
        double worstResidual) {

    /** A line needs three points to say how sure it is. */
    public static final int FEWEST = 3;

    /**
     * @param x at least {@link #FEWEST}, not all the same
     * @param y one for each x
     * @throws IllegalArgumentException when there are fewer, or x does not vary
     */
    public static Line through(double[] x, double[] y) {
        if (x.length < FEWEST || x.length != y.length) {
            throw new IllegalArgumentException("a line of " + x.length + " and " + y.length + " values");
        }
        SimpleRegression fit = new SimpleRegression();
        for (int i = 0; i < x.length; i++) {
            fit.addData(x[i], y[i]);
        }
        if (!(fit.getXSumSquares() > 0)) {
            throw new IllegalArgumentException("all points lie at one x");
        }
        double worst = 0;
        for (int i = 0; i < x.length; i++) {
            worst = Math.max(worst, Math.abs(y[i] - fit.predict(x[i])));
        }
        double xMean = Spread.of(x).mean();
        return new Line(
                x.length,
                fit.getIntercept(),
                fit.getSlope(),
                fit.getInterceptStdErr(),
                fit.getSlopeStdErr(),
                Math.sqrt(fit.getMeanSquareError()),
                xMean,
                fit.getXSumSquares(),
                worst);
    }

    public double at(double x) {
        return intercept + slope * x;
    }

    /** Standard uncertainty of {@link #at}: that of the line, not of a further point. */
    public double standardAt(double x) {
        double away = x - xMean;
        return residualSd * Math.sqrt(1.0 / n + away * away / xSquares);
    }

    /** Correlation of intercept and slope. */
    public double correlation() {
        return -xMean / Math.sqrt(xSquares / n + xMean * xMean);
    }

    /** Degrees of freedom of every uncertainty here. */
    public int dof() {
        return n - 2;
    }
}
