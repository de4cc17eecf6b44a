package evenfall.quantity;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * The one way in which a number becomes text in an output: fixed decimals, a point, rounded half away from zero.
 *
 * <p>{@code Double.toString} differs between releases of Java and {@code String.format} between locales; a replayed trace
 * must give the same bytes on any machine.
 */
public final class FixedDecimals {
    private static final long[] SCALE = {1, 10, 100, 1_000, 10_000, 100_000, 1_000_000};

    /** The two digits of each number below 100, the first in the low byte. */
    private static final short[] PAIRS = new short[100];

    /** Eight bytes at once, the first the lowest, on any machine. */
    private static final VarHandle EIGHT_BYTES =
            MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

    /** So many digits and a point fill eight bytes. */
    private static final long SHORT_BELOW = 10_000_000;

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
            PAIRS[two] = (short) (('0' + two / 10) | (('0' + two % 10) << 8));
        }
    }

    /** Largest magnitude that can be written; beyond it something upstream is broken. */
    public static final double LARGEST = 1e12;

    private FixedDecimals() {}

    /** Room that {@link #write} never needs more of: sign, 19 digits and a point; what it does not take it may write over. */
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
        int count = Math.max(decimals + 1, count(scaled));
        return scaled < SHORT_BELOW && count < Long.BYTES
                ? brief(out, from, (int) scaled, count, decimals)
                : lengthy(out, from, scaled, count, decimals);
    }

    /**
     * Most numbers, in one piece and without a question: how many digits one has, a processor cannot foresee. What is written beyond its end, the
     * next is written over.
     */
    private static int brief(byte[] out, int from, int value, int count, int decimals) {
        int high = value / 10_000;
        long eight = four(high) | (four(value - 10_000 * high) << Integer.SIZE);
        long digits = eight >>> (Byte.SIZE * (Long.BYTES - count));
        if (decimals > 0) {
            int before = Byte.SIZE * (count - decimals);
            long whole = digits & ((1L << before) - 1);
            digits = whole | ((long) '.' << before) | ((digits ^ whole) << Byte.SIZE);
        }
        EIGHT_BYTES.set(out, from, digits);
        return from + count + (decimals > 0 ? 1 : 0);
    }

    private static long four(int value) {
        int high = value / 100;
        return PAIRS[high] | ((long) PAIRS[value - 100 * high] << Short.SIZE);
    }

    private static int lengthy(byte[] out, int from, long value, int count, int decimals) {
        int end = from + count + (decimals > 0 ? 1 : 0);
        int i = end;
        long left = value;
        for (int digit = 0; digit < count; digit++) {
            if (digit == decimals && digit > 0) {
                out[--i] = '.';
            }
            long rest = left / 10;
            out[--i] = (byte) ('0' + left - 10 * rest);
            left = rest;
        }
        return end;
    }

    /** How many digits, from how many bits: 1233/4096 is the logarithm of 2 to base 10, a little less. */
    private static int count(long value) {
        int count = ((Long.SIZE - Long.numberOfLeadingZeros(value | 1)) * 1233) >> 12;
        return count + 1 - (int) ((value - POWERS[count]) >>> (Long.SIZE - 1));
    }
}
