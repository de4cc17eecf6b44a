package evenfall.pattern;

import org.jspecify.annotations.Nullable;

/**
 * What a stretch of rows got, relative to its mean. Ratios, not percent.
 *
 * @param rowCv sample standard deviation (n − 1) over mean
 * @param leastRow the least fed row over the mean
 * @param mostRow the most fed row over the mean
 * @param below80Share share of the rows below 80 % of the mean
 * @param above120Share share of the rows above 120 %
 */
public record RowMeasures(double rowCv, double leastRow, double mostRow, double below80Share, double above120Share) {
    /**
     * Measures a stretch of rows.
     *
     * @param amounts what fell on each row
     * @param from first row of the stretch
     * @param to one past its last
     * @return null where there are fewer than two rows or nothing fell: then no measure is defined
     */
    public static @Nullable RowMeasures of(double[] amounts, int from, int to) {
        int n = to - from;
        if (n < 2) {
            return null;
        }
        double sum = 0;
        for (int j = from; j < to; j++) {
            sum += amounts[j];
        }
        double mean = sum / n;
        if (!(mean > 0)) {
            return null;
        }
        double perMean = 1 / mean;
        double squares = 0;
        double least = Double.MAX_VALUE;
        double most = 0;
        int below = 0;
        int above = 0;
        for (int j = from; j < to; j++) {
            double relative = amounts[j] * perMean;
            squares += (relative - 1) * (relative - 1);
            least = Math.min(least, relative);
            most = Math.max(most, relative);
            below += relative < 0.8 ? 1 : 0;
            above += relative > 1.2 ? 1 : 0;
        }
        return new RowMeasures(Math.sqrt(squares / (n - 1)), least, most, (double) below / n, (double) above / n);
    }

    /**
     * The same where each row has a variance of its own: what the row CV may be expected to be, as the root of its expected square. Other
     * measures stay those of the likeliest rows.
     *
     * @param squares sum of the rows' variances
     * @param amounts what each row may expect
     * @param n how many rows there are
     */
    RowMeasures withUnsure(double squares, double[] amounts, int n) {
        double sum = 0;
        for (int j = 0; j < n; j++) {
            sum += amounts[j];
        }
        double mean = sum / n;
        return new RowMeasures(
                Math.sqrt(rowCv * rowCv + squares / ((n - 1) * mean * mean)),
                leastRow,
                mostRow,
                below80Share,
                above120Share);
    }
}
