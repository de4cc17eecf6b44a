package evenfall.bench.prove.measure;

import org.hipparchus.stat.StatUtils;

/**
 * Repeated readings of one thing.
 *
 * @param n how many
 * @param mean their mean
 * @param sd sample standard deviation, with n − 1; 0 for a single reading, which {@link #dof} tells apart
 */
public record Spread(int n, double mean, double sd) {

    /**
     * @throws IllegalArgumentException without a reading
     */
    public static Spread of(double... readings) {
        if (readings.length == 0) {
            throw new IllegalArgumentException("no reading has no mean");
        }
        double mean = StatUtils.mean(readings);
        double sd = readings.length == 1 ? 0 : Math.sqrt(StatUtils.variance(readings, mean));
        return new Spread(readings.length, mean, sd);
    }

    /** Degrees of freedom of the standard deviation. */
    public int dof() {
        return n - 1;
    }

    /** Standard deviation over the mean's size; a mean of 0 has none and gives infinity. */
    public double cv() {
        return sd / Math.abs(mean);
    }
}
