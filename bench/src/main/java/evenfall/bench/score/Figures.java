package evenfall.bench.score;

import java.util.List;
import org.hipparchus.stat.StatUtils;
import org.hipparchus.stat.descriptive.rank.Percentile;
import org.jspecify.annotations.Nullable;

/**
 * Means and percentiles of one side, truth or report; each null where nothing was known.
 *
 * @param rateErrorMeanPct mean rate error, percent of the target
 * @param rateErrorP95AbsPct 95th percentile of its magnitude, percent
 * @param rowCvMean mean row CV of the whole boom, a ratio
 * @param rowCvP95 its 95th percentile, a ratio
 */
public record Figures(
        @Nullable Double rateErrorMeanPct,
        @Nullable Double rateErrorP95AbsPct,
        @Nullable Double rowCvMean,
        @Nullable Double rowCvP95) {

    static Figures of(List<Double> rateErrorsPct, List<Double> rowCvs) {
        return new Figures(mean(rateErrorsPct), p95Abs(rateErrorsPct), mean(rowCvs), p95Abs(rowCvs));
    }

    static @Nullable Double mean(List<Double> values) {
        return values.isEmpty() ? null : StatUtils.mean(plain(values));
    }

    static @Nullable Double p95Abs(List<Double> values) {
        if (values.isEmpty()) {
            return null;
        }
        double[] magnitudes = plain(values);
        for (int i = 0; i < magnitudes.length; i++) {
            magnitudes[i] = Math.abs(magnitudes[i]);
        }
        return new Percentile(95)
                .withEstimationType(Percentile.EstimationType.R_7)
                .evaluate(magnitudes);
    }

    private static double[] plain(List<Double> values) {
        double[] plain = new double[values.size()];
        for (int i = 0; i < plain.length; i++) {
            plain[i] = values.get(i);
        }
        return plain;
    }
}
