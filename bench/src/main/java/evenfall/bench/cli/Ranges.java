package evenfall.bench.cli;

import evenfall.config.ConfigException;
import java.math.BigDecimal;

/** Checks of numbers given as options. */
final class Ranges {
    /** Beyond these a row of zeros says less than a power of ten. */
    private static final double SMALLEST_PLAIN = 1e-6;

    private static final double LARGEST_PLAIN = 1e9;

    private Ranges() {}

    /**
     * @throws ConfigException unless {@code low <= value <= high}
     */
    static void within(String option, double value, double low, double high, String unit) throws ConfigException {
        if (!(value >= low && value <= high)) {
            throw ConfigException.ofOption(
                    option,
                    plain(value) + " cannot be used",
                    "from " + plain(low) + " to " + plain(high) + unitAfter(unit));
        }
    }

    /**
     * @throws ConfigException unless {@code low < value <= high}
     */
    static void above(String option, double value, double low, double high, String unit) throws ConfigException {
        if (!(value > low && value <= high)) {
            throw ConfigException.ofOption(
                    option,
                    plain(value) + " cannot be used",
                    "above " + plain(low) + ", at most " + plain(high) + unitAfter(unit));
        }
    }

    private static String unitAfter(String unit) {
        return unit.isEmpty() ? "" : " " + unit;
    }

    private static String plain(double value) {
        if (value != 0 && !(Math.abs(value) >= SMALLEST_PLAIN && Math.abs(value) < LARGEST_PLAIN)) {
            return Double.toString(value);
        }
        BigDecimal exact = BigDecimal.valueOf(value);
        return exact.signum() == 0 ? "0" : exact.stripTrailingZeros().toPlainString();
    }
}
