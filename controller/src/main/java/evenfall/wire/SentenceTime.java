package evenfall.wire;

import java.util.Objects;
import java.util.OptionalInt;

/**
 * The UTC time of day that a receiver's sentence carries, of more kinds than the monitor decodes: for giving times to a
 * recording that has none of its own.
 */
public final class SentenceTime {

    private static final int ADDRESS_END = 6;

    private SentenceTime() {}

    /**
     * Returns the time of day of one whole sentence in milliseconds since midnight UTC: from RMC, GGA, GNS, ZDA, GBS and
     * GST in their first field, from GLL in its fifth. Empty for every other line, for an empty time and for a bad
     * checksum.
     *
     * @param bytes a line from its {@code $} to its checksum, with or without its line end
     * @throws IndexOutOfBoundsException when the range is not within the array
     */
    public static OptionalInt timeOfDayMs(byte[] bytes, int offset, int length) {
        Objects.checkFromIndexSize(offset, length, bytes.length);
        int end = offset + length;
        while (end > offset && (bytes[end - 1] == '\n' || bytes[end - 1] == '\r')) {
            end--;
        }
        int star = end - 3;
        int comma = offset + ADDRESS_END;
        if (star <= comma || bytes[offset] != '$' || bytes[comma] != ',' || !checksumHolds(bytes, offset, star)) {
            return OptionalInt.empty();
        }
        int before = fieldsBeforeTime(bytes, comma);
        if (before < 0) {
            return OptionalInt.empty();
        }
        Fields fields = new Fields();
        fields.open(bytes, comma, star);
        for (int i = 0; i < before; i++) {
            fields.skip();
        }
        UtcFields utc = new UtcFields();
        utc.readTime(fields);
        return utc.hasTime() && fields.good() ? OptionalInt.of(utc.timeOfDayMs()) : OptionalInt.empty();
    }

    private static int fieldsBeforeTime(byte[] bytes, int comma) {
        int letters = bytes[comma - 3] << 16 | bytes[comma - 2] << 8 | bytes[comma - 1];
        return switch (letters) {
            case 'R' << 16 | 'M' << 8 | 'C',
                    'G' << 16 | 'G' << 8 | 'A',
                    'G' << 16 | 'N' << 8 | 'S',
                    'Z' << 16 | 'D' << 8 | 'A',
                    'G' << 16 | 'B' << 8 | 'S',
                    'G' << 16 | 'S' << 8 | 'T' -> 0;
            case 'G' << 16 | 'L' << 8 | 'L' -> 4;
            default -> -1;
        };
    }

    private static boolean checksumHolds(byte[] bytes, int offset, int star) {
        int sum = 0;
        for (int i = offset + 1; i < star; i++) {
            sum ^= bytes[i];
        }
        int high = Fields.hexDigit(bytes[star + 1]);
        int low = Fields.hexDigit(bytes[star + 2]);
        return bytes[star] == '*' && high >= 0 && low >= 0 && sum == (high << 4 | low);
    }
}
