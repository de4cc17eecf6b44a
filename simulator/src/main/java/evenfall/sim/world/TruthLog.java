package evenfall.sim.world;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Keeps the truth of a run for scoring: samples at 5 Hz and the row ledger.
 *
 * <p>Means and percentiles here are over time samples for the rate and over complete cells of 2 m for the rows: a metre of ground
 * counts the same at any speed. Percentiles are by nearest rank: the smallest value with at least that share at or below it.
 */
public final class TruthLog implements TruthSink {
    private final List<TruthSample> samples = new ArrayList<>();
    private Optional<RowLedger> ledger = Optional.empty();

    /**
     * Figures over a run. Ratios, not percent.
     *
     * @param mean mean of the values
     * @param p95 95th percentile of the values, of their magnitudes where they have a sign
     */
    public record Summary(double mean, double p95) {}

    @Override
    public void sample(TruthSample sample) {
        samples.add(sample);
    }

    @Override
    public void end(RowLedger finished) {
        ledger = Optional.of(finished);
    }

    /** In order of time. */
    public List<TruthSample> samples() {
        return List.copyOf(samples);
    }

    /** Rows × cells. */
    public RowLedger ledger() {
        return ledger.orElseThrow(() -> new IllegalStateException("the run has not ended"));
    }

    /** Row CV of each complete cell in which something fell, along the pass. */
    public double[] rowCvByCell() {
        RowLedger rows = ledger();
        double[] values = new double[rows.cells()];
        int n = 0;
        for (int cell = 0; cell < rows.cells(); cell++) {
            Optional<RowFigures> figures = rows.isComplete(cell) ? rows.figures(cell) : Optional.empty();
            if (figures.isPresent()) {
                values[n++] = figures.get().rowCv();
            }
        }
        return Arrays.copyOf(values, n);
    }

    /** Row CV over the complete cells; empty when there is none. */
    public Optional<Summary> rowCv() {
        return summary(rowCvByCell());
    }

    /** Rate error over the samples in which it means something: mean with sign, percentile of the magnitude. */
    public Optional<Summary> rateError() {
        double[] values = new double[samples.size()];
        int n = 0;
        for (TruthSample sample : samples) {
            OptionalDouble error = sample.rateError();
            if (error.isPresent()) {
                values[n++] = error.getAsDouble();
            }
        }
        return summary(Arrays.copyOf(values, n));
    }

    private static Optional<Summary> summary(double[] values) {
        if (values.length == 0) {
            return Optional.empty();
        }
        double sum = 0;
        double[] magnitudes = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            sum += values[i];
            magnitudes[i] = Math.abs(values[i]);
        }
        Arrays.sort(magnitudes);
        int rank = (int) Math.ceil(0.95 * values.length);
        return Optional.of(new Summary(sum / values.length, magnitudes[Math.max(0, rank - 1)]));
    }
}
