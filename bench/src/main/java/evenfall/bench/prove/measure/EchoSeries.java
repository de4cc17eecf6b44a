package evenfall.bench.prove.measure;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.stat.descriptive.rank.Median;
import org.jspecify.annotations.Nullable;

/**
 * Echoes of one sensor while nothing moved.
 *
 * @param asked sentences in which it could have answered
 * @param missing times that no echo came
 * @param outliers echoes of something else, left out of the rest
 * @param distanceM mean distance from its face, m
 * @param noiseM standard deviation of one reading, m
 */
public record EchoSeries(int asked, int missing, int outliers, double distanceM, double noiseM) {
    /** Fewest echoes that tell noise from outliers; a choice of ours: half a second at 20 a second. */
    public static final int FEWEST = 10;

    /**
     * An echo so many standard deviations from the median is of something else: of a million good ones less than one lies so far
     * out.
     */
    private static final double FAR = 5;

    /** Standard deviation over the median absolute deviation, for the normal distribution. */
    private static final double MAD_TO_SD = 1.4826;

    /**
     * @param echoesUs there and back, µs; null where no echo came
     * @param soundMps speed of sound, m/s
     * @return null when fewer than {@link #FEWEST} echoes came
     */
    public static @Nullable EchoSeries of(List<@Nullable Long> echoesUs, double soundMps) {
        double perUsM = 0.5e-6 * soundMps;
        double[] heard = echoesUs.stream()
                .filter(us -> us != null)
                .mapToDouble(us -> us * perUsM)
                .toArray();
        if (heard.length < FEWEST) {
            return null;
        }
        double middle = new Median().evaluate(heard);
        double[] away = new double[heard.length];
        for (int i = 0; i < heard.length; i++) {
            away[i] = Math.abs(heard[i] - middle);
        }
        // Whole microseconds can make all readings but a few the same: one of them is always within reach.
        double reachM = FAR * Math.max(MAD_TO_SD * new Median().evaluate(away), perUsM);
        double[] kept =
                Arrays.stream(heard).filter(m -> Math.abs(m - middle) <= reachM).toArray();
        Spread spread = Spread.of(kept);
        return new EchoSeries(
                echoesUs.size(),
                echoesUs.size() - heard.length,
                heard.length - kept.length,
                spread.mean(),
                spread.sd());
    }

    /** Echoes that count. */
    public int kept() {
        return asked - missing - outliers;
    }
}
