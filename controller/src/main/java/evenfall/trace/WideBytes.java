package evenfall.trace;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * Questions to many bytes, eight at a time: a trace of a day has hundreds of millions. That some byte of a word is less than n, up to 128, shows in {@code (word −
 * n…n) & ~word & 0x80…80}, the lowest such bit being that of the first such byte (H. S. Warren, Hacker's Delight, from memory).
 */
final class WideBytes {
    private static final VarHandle WORD = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
    private static final long ONES = 0x0101010101010101L;
    private static final long HIGHS = 0x8080808080808080L;

    private WideBytes() {}

    /** Place of the first such byte from one place up to, not with, another; that other where there is none. */
    static int find(byte wanted, byte[] in, int from, int to) {
        long all = ONES * wanted;
        int i = from;
        for (; i + Long.BYTES <= to; i += Long.BYTES) {
            long differs = (long) WORD.get(in, i) ^ all;
            long none = (differs - ONES) & ~differs & HIGHS;
            if (none != 0) {
                return i + Long.numberOfTrailingZeros(none) / Byte.SIZE;
            }
        }
        while (i < to && in[i] != wanted) {
            i++;
        }
        return i;
    }

    /** Whether all bytes there are printable ASCII, blank to tilde. */
    static boolean allPrintable(byte[] in, int from, int to) {
        long odd = 0;
        int i = from;
        for (; i + Long.BYTES <= to; i += Long.BYTES) {
            long word = (long) WORD.get(in, i);
            // Of bytes below 128 the least that are not: less than a blank, or the one that a 1 more makes 128.
            odd |= (word | ((word - ONES * ' ') & ~word) | ((word & ~HIGHS) + ONES)) & HIGHS;
        }
        for (; i < to; i++) {
            odd |= in[i] < ' ' || in[i] > '~' ? 1 : 0;
        }
        return odd == 0;
    }
}
