package evenfall.quantity;

/**
 * The one way in which a number becomes text in an output: fixed decimals, a point, rounded half away from zero.
 *
 * <p>{@code Double.toString} differs between releases of Java and {@code String.format} between locales; a replayed trace
 * must give the same bytes on any machine.
 */
public final class FixedDecimals {
    private static final long[] SCALE = {1, 10, 100, 1_000, 10_000, 100_000, 1_000_000};

    /** The two digits of each number below 100. */
    private static final byte[] TENS = new byte[100];

    private static final byte[] ONES = new byte[100];

    /** Powers of ten, by their exponents; instead of the first nothing, which is written as one digit too. */
    private static final long[] POWERS = new long[19];

    static {
        long power = 1;
        for (int i = 0; i < POWERS.length; i++) {
            POWERS[i] = power;
            power *= 10;
        }
        POWERS[0] = 0;
        for (int two = 0; two < 100; two++) {
            TENS[two] = (byte) ('0' + two / 10);
            ONES[two] = (byte) ('0' + two % 10);
        }
    }

    /** Largest magnitude that can be written; beyond it something upstream is broken. */
    public static final double LARGEST = 1e12;

    private FixedDecimals() {}

    /** Room that {@link #write} never needs more of: sign, 19 digits and a point. */
    public static final int LONGEST = 21;

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
        byte[] digits = new byte[LONGEST];
        int end = write(digits, 0, value, decimals);
        for (int i = 0; i < end; i++) {
            out.append((char) digits[i]);
        }
    }

    /**
     * As {@link #text}, as ASCII into an array.
     *
     * @param at where the first character goes; from there on {@link #LONGEST} bytes are there to be written
     * @return one past the last character
     */
    public static int write(byte[] out, int at, double value, int decimals) {
        if (!(Math.abs(value) <= LARGEST)) {
            throw new IllegalArgumentException("cannot be written as a number with fixed decimals");
        }
        // The cast cuts off what stands behind the point, so this rounds half up.
        long scaled = (long) (Math.abs(value) * SCALE[decimals] + 0.5);
        return digits(out, at, value < 0, scaled, decimals);
    }

    /** A whole number, likewise; all but the least of all are written. */
    public static int write(byte[] out, int at, long value) {
        if (value == Long.MIN_VALUE) {
            throw new IllegalArgumentException("cannot be written as a whole number");
        }
        return digits(out, at, value < 0, Math.abs(value), 0);
    }

    private static int digits(byte[] out, int at, boolean negative, long scaled, int decimals) {
        int from = at;
        if (negative && scaled != 0) {
            out[from++] = '-';
        }
        int end = from + Math.max(decimals + 1, count(scaled));
        if (decimals == 0) {
            whole(out, from, end, scaled);
            return end;
        }
        // Behind the place that the point takes in the end; then those before it move up.
        whole(out, from + 1, end + 1, scaled);
        int point = end - decimals;
        for (int i = from; i < point; i++) {
            out[i] = out[i + 1];
        }
        out[point] = '.';
        return end + 1;
    }

    /** Digits from the back, two at a time, and zeros before them. */
    private static void whole(byte[] out, int from, int end, long value) {
        int i = end;
        long left = value;
        while (left >= 100) {
            long rest = left / 100;
            int two = (int) (left - 100 * rest);
            out[--i] = ONES[two];
            out[--i] = TENS[two];
            left = rest;
        }
        out[--i] = ONES[(int) left];
        if (left >= 10) {
            out[--i] = TENS[(int) left];
        }
        while (i > from) {
            out[--i] = '0';
        }
    }

    /** How many digits, from how many bits: 1233/4096 is the logarithm of 2 to base 10, a little less. */
    private static int count(long value) {
        int count = ((Long.SIZE - Long.numberOfLeadingZeros(value | 1)) * 1233) >> 12;
        return value < POWERS[count] ? count : count + 1;
    }
}
