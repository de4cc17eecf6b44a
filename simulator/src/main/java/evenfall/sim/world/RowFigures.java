package evenfall.sim.world;

import java.util.Optional;

/**
 * What a stretch of rows really got, relative to its mean. Ratios, not percent.
 *
 * @param rowCv sample standard deviation (n − 1) over mean
 * @param leastRow the least fed row over the mean
 * @param mostRow the most fed row over the mean
 */
public record RowFigures(double rowCv, double leastRow, double mostRow) {
    /**
     * @param amount what fell on each row, in any unit
     * @param from first row of the stretch
     * @param to one past its last
     * @return empty where there are fewer than two rows or nothing fell
     */
    static Optional<RowFigures> of(double[] amount, int from, int to) {
        int n = to - from;
        double sum = 0;
        for (int j = from; j < to; j++) {
            sum += amount[j];
        }
        double mean = sum / n;
        if (n < 2 || !(mean > 0)) {
            return Optional.empty();
        }
        double squares = 0;
        double least = amount[from];
        double most = amount[from];
        for (int j = from; j < to; j++) {
            double off = amount[j] - mean;
            squares += off * off;
            least = amount[j] < least ? amount[j] : least;
            most = amount[j] > most ? amount[j] : most;
        }
        return Optional.of(new RowFigures(Math.sqrt(squares / (n - 1)) / mean, least / mean, most / mean));
    }
}
