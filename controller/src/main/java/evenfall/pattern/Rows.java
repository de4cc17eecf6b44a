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
    /**
     * Beside the rows that are kept lie so many more, where all that falls farther out is taken to fall: so no line needs to be asked where it
     * fell.
     */
    private static final int BEYOND = 3;

    private final double widthM;
    private final double perWidth;
    private final double phase;
    private final int firstIndex;
    private final double[] amount;
    private final double[] unsure;
    private boolean anyUnsure;

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
        this.amount = new double[lastIndex - firstIndex + 1 + 2 * BEYOND];
        this.unsure = new double[amount.length];
    }

    public void clear() {
        Arrays.fill(amount, 0);
        if (anyUnsure) {
            Arrays.fill(unsure, 0);
            anyUnsure = false;
        }
    }

    /**
     * Lets a line fall.
     *
     * @param rightM where, m
     * @param quantity how much, in any unit
     */
    public void add(double rightM, double quantity) {
        double place = rightM * perWidth - phase;
        double left = Math.floor(place);
        double toRight = place - left;
        int row = inside((int) left);
        amount[row] += quantity * (1 - toRight);
        amount[row + 1] += quantity * toRight;
    }

    /**
     * Lets lines fall, as if their places were sure.
     *
     * @param quantities how much each brings, in any unit
     */
    void add(Nearness lines, double[] quantities) {
        for (int i = 0; i < lines.count; i++) {
            double quantity = quantities[i];
            int row = inside(lines.near[i]);
            double right = lines.right[i];
            double away = Math.abs(right);
            amount[row - 1] += quantity * (0.5 * (away - right));
            amount[row] += quantity * (1 - away);
            amount[row + 1] += quantity * (0.5 * (away + right));
        }
    }

    /**
     * Lets lines fall whose places are known to a standard deviation: what each row may expect of them, and how that changes with their places. Lines
     * side by side err together: from outlets that are higher than thought all land farther off.
     *
     * @param quantities how much each brings, in any unit
     */
    void addUnsure(Nearness lines, double[] quantities) {
        anyUnsure = true;
        for (int i = 0; i < lines.count; i++) {
            double quantity = quantities[i];
            int row = inside(lines.near[i]);
            double right = lines.right[i];
            double away = Math.abs(right);
            double aside = lines.aside[i];
            amount[row - 1] += quantity * (0.5 * (away - right) + aside);
            amount[row] += quantity * (1 - away - 2 * aside);
            amount[row + 1] += quantity * (0.5 * (away + right) + aside);
            double moves = quantity * lines.moves[i];
            double slope = lines.slope[i];
            unsure[row - 1] -= 0.5 * moves * (1 - slope);
            unsure[row] -= moves * slope;
            unsure[row + 1] += 0.5 * moves * (1 + slope);
        }
    }

    /** Position in the arrays of the row with that number, or of one beyond those that are kept, with another to either side. */
    private int inside(int row) {
        return Math.max(1, Math.min(amount.length - 2, row - firstIndex + BEYOND));
    }

    /** What fell beyond the rows that are kept. */
    double beyond() {
        double sum = 0;
        for (int k = 0; k < BEYOND; k++) {
            sum += amount[k] + amount[amount.length - 1 - k];
        }
        return sum;
    }

    /** Standard deviation of what fell on a row, by those of the places of its lines; may have either sign. */
    double unsure(int row) {
        return unsure[row + BEYOND];
    }

    public int count() {
        return amount.length - 2 * BEYOND;
    }

    /** Place of the row with that position in this object, m right of the centre line. */
    public double rightM(int row) {
        return (row + firstIndex + phase) * widthM;
    }

    public double amount(int row) {
        return amount[row + BEYOND];
    }

    /** The first row at or right of a place; {@link #count()} where there is none. */
    public int firstAtOrRightOf(double rightM) {
        int row = (int) Math.ceil(rightM / widthM - phase - firstIndex - 1e-9);
        return Math.max(0, Math.min(row, count()));
    }

    /** One past the last row at or left of a place; 0 where there is none. */
    public int endAtOrLeftOf(double rightM) {
        int row = (int) Math.floor(rightM / widthM - phase - firstIndex + 1e-9) + 1;
        return Math.max(0, Math.min(row, count()));
    }

    /** Measures of a stretch; as {@link RowMeasures#of}. */
    public @Nullable RowMeasures measures(int from, int to) {
        return RowMeasures.of(amount, from + BEYOND, to + BEYOND);
    }

    /** As {@link #measures(int, int)}, with what the rows are not sure of. */
    @Nullable
    RowMeasures measures(int from, int to, int together) {
        RowMeasures sure = measures(from, to);
        return sure == null ? null : sure.withUnsure(amount, unsure, from + BEYOND, to + BEYOND, together);
    }

    public double widthM() {
        return widthM;
    }
}
