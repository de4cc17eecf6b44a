package evenfall.trace;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Bytes as text: printable ASCII stands for itself but for blank and percent, all else is {@code %} and two digits. */
final class EscapedBytes {

    private static final String DIGITS = "0123456789ABCDEF";

    private EscapedBytes() {}

    static String escape(byte[] bytes) {
        StringBuilder text = new StringBuilder(bytes.length + 8);
        append(text, bytes);
        return text.toString();
    }

    static void append(StringBuilder text, byte[] bytes) {
        for (byte b : bytes) {
            if (b > ' ' && b <= '~' && b != '%') {
                text.append((char) b);
            } else {
                text.append('%').append(DIGITS.charAt(b >> 4 & 0xF)).append(DIGITS.charAt(b & 0xF));
            }
        }
    }

    /** Returns the bytes that a text stands for, or null where it is not of this form. */
    static byte @Nullable [] unescape(byte[] text, int from, int to) {
        byte[] bytes = new byte[to - from];
        int length = 0;
        int i = from;
        while (i < to) {
            byte c = text[i];
            if (c <= ' ' || c > '~') {
                return null;
            }
            if (c != '%') {
                bytes[length++] = c;
                i++;
                continue;
            }
            if (i + 2 >= to) {
                return null;
            }
            int high = Character.digit(text[i + 1], 16);
            int low = Character.digit(text[i + 2], 16);
            if (high < 0 || low < 0) {
                return null;
            }
            bytes[length++] = (byte) (high << 4 | low);
            i += 3;
        }
        return Arrays.copyOf(bytes, length);
    }
}
