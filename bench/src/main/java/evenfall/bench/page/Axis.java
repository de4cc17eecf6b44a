package evenfall.bench.page;

import evenfall.quantity.FixedDecimals;
import java.util.ArrayList;
import java.util.List;

/**
 * One axis: what it shows, from where to where, and where it is marked.
 *
 * @param label what it shows, with its unit
 * @param low value at its beginning
 * @param high value at its end, above {@code low}
 * @param step between marks, above 0
 * @param decimals of the numbers at the marks
 */
public record Axis(String label, double low, double high, double step, int decimals) {
    private static final int MOST_MARKS = 8;
    private static final int MOST_DECIMALS = 6;

    public Axis {
        if (!(low < high) || !(step > 0) || (high - low) / step > 100) {
            throw new IllegalArgumentException("an axis runs from low to high and has at most a hundred marks");
        }
    }

    /** With marks at round numbers (1, 2 or 5 and tens of them), at most eight. */
    public static Axis of(String label, double low, double high) {
        double step = StrictMath.pow(10, Math.floor(StrictMath.log10(high - low)) - 1);
        double[] grow = {2, 2.5, 2};
        for (int i = 0; (high - low) / step > MOST_MARKS; i++) {
            step *= grow[i % grow.length];
        }
        int decimals = (int) Math.max(0, Math.min(MOST_DECIMALS, -Math.floor(StrictMath.log10(step * 1.0001))));
        return new Axis(label, low, high, step, decimals);
    }

    /** As {@link #of}, widened so that it begins and ends at a mark. */
    public static Axis around(String label, double low, double high) {
        double far = high > low ? high : low + Math.max(1, Math.abs(low));
        Axis tight = of(label, low, far);
        double from = Math.floor(low / tight.step + 1e-9) * tight.step;
        double to = Math.ceil(far / tight.step - 1e-9) * tight.step;
        return new Axis(label, from, to, tight.step, tight.decimals);
    }

    double share(double value) {
        return (value - low) / (high - low);
    }

    List<Double> marks() {
        List<Double> marks = new ArrayList<>();
        for (long k = (long) Math.ceil(low / step - 1e-9); k * step <= high + 1e-9 * step; k++) {
            marks.add(k * step);
        }
        return marks;
    }

    String text(double value) {
        return FixedDecimals.text(value, decimals);
    }
}
