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
    /** The mean of a root is below the root of the mean: of a quantity that is as often 0 as not by 1 − √½, of a normal one's square by 1 − √(2/π). */
    private static final double MOST_LESS = 1 - Math.sqrt(2 / Math.PI);

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
            // Seldom so; Math.min and Math.max would make each row wait for the one before.
            if (relative < least) {
                least = relative;
            }
            if (relative > most) {
                most = relative;
            }
            below += relative < 0.8 ? 1 : 0;
            above += relative > 1.2 ? 1 : 0;
        }
        return new RowMeasures(Math.sqrt(squares / (n - 1)), least, most, (double) below / n, (double) above / n);
    }

    /**
     * The same where each row is known to a standard deviation: what the row CV may be expected to be. Other measures stay those of the
     * likeliest rows.
     *
     * <p>With rows {@code m + d + e u} and {@code e} of variance 1 the same for all rows of a stretch, {@code Q = Σ (d + e u)²} has the mean
     * {@code Σd² + Σu²} and, were e normal, the variance {@code Σ 4 (Σdu)² + 2 (Σu²)²}, the outer sums over stretches; and the mean of its root is
     * {@code √Q̄ (1 − var Q / 8 Q̄²)} to second order (Taylor's series).
     *
     * @param amounts what each row may expect
     * @param unsure standard deviation of each, of either sign
     * @param from first row of the stretch
     * @param to one past its last
     * @param together for so many rows in a row errors are alike
     */
    RowMeasures withUnsure(double[] amounts, double[] unsure, int from, int to, int together) {
        int n = to - from;
        double sum = 0;
        for (int j = from; j < to; j++) {
            sum += amounts[j];
        }
        double mean = sum / n;
        double squares = 0;
        double variance = 0;
        for (int first = from; first < to; first += together) {
            int end = Math.min(to, first + together);
            double product = 0;
            double square = 0;
            for (int j = first; j < end; j++) {
                product += (amounts[j] - mean) * unsure[j];
                square += unsure[j] * unsure[j];
            }
            squares += square;
            variance += 4 * product * product + 2 * square * square;
        }
        double perMean = 1 / ((n - 1) * mean * mean);
        double expected = rowCv * rowCv + squares * perMean;
        if (!(expected > 0)) {
            return this;
        }
        double less = variance * perMean * perMean / (8 * expected * expected);
        return new RowMeasures(
                Math.sqrt(expected) * (1 - Math.min(MOST_LESS, less)), leastRow, mostRow, below80Share, above120Share);
    }
}
