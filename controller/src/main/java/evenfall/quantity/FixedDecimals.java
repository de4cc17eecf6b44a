package evenfall.quantity;

/**
 * The one way in which a number becomes text in an output: fixed decimals, a point, rounded half away from zero.
 *
 * <p>{@code Double.toString} differs between releases of Java and {@code String.format} between locales; a replayed trace
 * must give the same bytes on any machine.
 */
public final class FixedDecimals {
    private static final long[] SCALE = {1, 10, 100, 1_000, 10_000, 100_000, 1_000_000};

    /** Largest magnitude that can be written; beyond it something upstream is broken. */
    public static final double LARGEST = 1e12;

    private FixedDecimals() {}

    /**
     * @param value finite, magnitude at most {@link #LARGEST}
     * @param decimals 0 to 6
     * @throws IllegalArgumentException for NaN, infinities and larger magnitudes: unknown is not a number here
     */
    public static String text(double value, int decimals) {
        StringBuilder out = new StringBuilder(16);
        append(out, value, decimals);
        return out.toString();
    }

    /** As {@link #text}, onto the end of a builder. */
    public static void append(StringBuilder out, double value, int decimals) {
        if (!(Math.abs(value) <= LARGEST)) {
            throw new IllegalArgumentException("cannot be written as a number with fixed decimals");
        }
        long scale = SCALE[decimals];
        long scaled = (long) Math.floor(Math.abs(value) * scale + 0.5);
        if (value < 0 && scaled != 0) {
            out.append('-');
        }
        out.append(scaled / scale);
        if (decimals > 0) {
            out.append('.');
            long fraction = scaled % scale;
            for (long digit = scale / 10; digit >= 1; digit /= 10) {
                out.append((char) ('0' + fraction / digit % 10));
            }
        }
    }
}
