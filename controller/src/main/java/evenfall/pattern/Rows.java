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
    /** Half the width of an even band over its standard deviation. */
    private static final double HALF_OVER_SD = Math.sqrt(3);

    /** A band up to so many rows to either side of a line reaches three rows at most; a wider one is cut off there. */
    private static final double MOST_HALF = 0.5;

    private final double widthM;
    private final double perWidth;
    private final double halfPerSd;
    private final double phase;
    private final int firstIndex;
    private final double[] amount;
    private final double[] unsure;

    /**
     * @param widthM row spacing, m, above 0
     * @param phase place of row 0 right of the centre line, in row spacings
     * @param reachM rows out to at least this far on either side are kept, m
     */
    public Rows(double widthM, double phase, double reachM) {
        this.widthM = widthM;
        this.perWidth = 1 / widthM;
        this.halfPerSd = HALF_OVER_SD / widthM;
        this.phase = phase;
        this.firstIndex = (int) Math.floor(-reachM / widthM - phase) - 1;
        int lastIndex = (int) Math.ceil(reachM / widthM - phase) + 1;
        this.amount = new double[lastIndex - firstIndex + 1];
        this.unsure = new double[amount.length];
    }

    public void clear() {
        Arrays.fill(amount, 0);
        Arrays.fill(unsure, 0);
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
     * Lets a line fall that is spread and whose place is known to a standard deviation: what each row may expect of it, the hat averaged over
     * an even band of both, and how that changes with the place. Lines side by side err together: from outlets that are higher than
     * thought all land farther off.
     *
     * @param rightM where it is thought to land, m
     * @param quantity how much, in any unit
     * @param sdM how much farther right it lands if all heights are greater by one standard deviation, m
     * @param bandM standard deviation of where a drop of it lands, by that and by its own spread, m
     */
    void add(double rightM, double quantity, double sdM, double bandM) {
        double at = rightM * perWidth - phase - firstIndex;
        double moves = quantity * sdM * perWidth;
        int near = (int) Math.floor(at + 0.5);
        double right = at - near;
        double half = Math.min(MOST_HALF, bandM * halfPerSd);
        if (Math.abs(right) < half && near >= 1 && near + 1 < amount.length) {
            double away = Math.abs(right);
            double aside = (half - away) * (half - away) / (4 * half);
            double slope = right / half;
            amount[near - 1] += quantity * (0.5 * (away - right) + aside);
            amount[near] += quantity * (1 - away - 2 * aside);
            amount[near + 1] += quantity * (0.5 * (away + right) + aside);
            unsure[near - 1] -= 0.5 * moves * (1 - slope);
            unsure[near] -= moves * slope;
            unsure[near + 1] += 0.5 * moves * (1 + slope);
            return;
        }
        int left = (int) Math.floor(at);
        double toRight = at - left;
        if (left >= 0 && left < amount.length) {
            amount[left] += quantity * (1 - toRight);
            unsure[left] -= moves;
        }
        if (left + 1 >= 0 && left + 1 < amount.length) {
            amount[left + 1] += quantity * toRight;
            unsure[left + 1] += moves;
        }
    }

    /** Standard deviation of what fell on a row, by those of the places of its lines; may have either sign. */
    double unsure(int row) {
        return unsure[row];
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
