package evenfall.pattern;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Crop rows across the boom: row j at {@code (j + phase) · width} from the centre line, and what has fallen on each.
 *
 * <p>A line that lands between two rows feeds both by nearness: {@code S_j = Σ q_i · hat((y_i − r_j)/w)}, {@code hat(x) =
 * max(0, 1 − |x|)}. The hats sum to 1 everywhere, so nothing is lost between rows. That a band between two rows feeds both is
 * common practice, no source; the linear hat is our model of it.
 */
public final class Rows {
    private final double widthM;
    private final double perWidth;
    private final double phase;
    private final int firstIndex;
    private final double[] amount;

    /**
     * @param widthM row spacing, m, above 0
     * @param phase place of row 0 right of the centre line, in row spacings
     * @param reachM rows out to at least this far on either side are kept, m
     */
    public Rows(double widthM, double phase, double reachM) {
        this.widthM = widthM;
        this.perWidth = 1 / widthM;
        this.phase = phase;
        this.firstIndex = (int) Math.floor(-reachM / widthM - phase) - 1;
        int lastIndex = (int) Math.ceil(reachM / widthM - phase) + 1;
        this.amount = new double[lastIndex - firstIndex + 1];
    }

    public void clear() {
        Arrays.fill(amount, 0);
    }

    /**
     * Lets a line fall.
     *
     * @param rightM where, m
     * @param quantity how much, in any unit
     * @return the part that fell on rows kept here; the rest fell outside the reach
     */
    public double add(double rightM, double quantity) {
        double at = rightM * perWidth - phase - firstIndex;
        int left = (int) at;
        left -= left > at ? 1 : 0;
        double toRight = at - left;
        double kept = 0;
        if (left >= 0 && left < amount.length) {
            amount[left] += quantity * (1 - toRight);
            kept += quantity * (1 - toRight);
        }
        if (left + 1 >= 0 && left + 1 < amount.length) {
            amount[left + 1] += quantity * toRight;
            kept += quantity * toRight;
        }
        return kept;
    }

    /**
     * Takes what fell on the same rows elsewhere: the sum of both.
     *
     * @param one rows of the same width and phase that reach at least as far as these
     * @param other the same rows as {@code one}
     */
    void takeSum(Rows one, Rows other) {
        int shift = firstIndex - one.firstIndex;
        for (int j = 0; j < amount.length; j++) {
            amount[j] = one.amount[j + shift] + other.amount[j + shift];
        }
    }

    public int count() {
        return amount.length;
    }

    /** Place of the row with that position in this object, m right of the centre line. */
    public double rightM(int row) {
        return (row + firstIndex + phase) * widthM;
    }

    public double amount(int row) {
        return amount[row];
    }

    /** The first row at or right of a place; {@link #count()} where there is none. */
    public int firstAtOrRightOf(double rightM) {
        int row = (int) Math.ceil(rightM / widthM - phase - firstIndex - 1e-9);
        return Math.max(0, Math.min(row, amount.length));
    }

    /** One past the last row at or left of a place; 0 where there is none. */
    public int endAtOrLeftOf(double rightM) {
        int row = (int) Math.floor(rightM / widthM - phase - firstIndex + 1e-9) + 1;
        return Math.max(0, Math.min(row, amount.length));
    }

    /** Measures of a stretch; as {@link RowMeasures#of}. */
    public @Nullable RowMeasures measures(int from, int to) {
        return RowMeasures.of(amount, from, to);
    }

    public double widthM() {
        return widthM;
    }
}
