package evenfall.sim.wire;

import evenfall.quantity.FixedDecimals;
import java.nio.charset.StandardCharsets;

/** Puts one sentence together: {@code $}, comma-separated fields, {@code *}, checksum, CR LF. Reused; one owner. */
final class SentenceWriter {
    /** Longest sentence, from {@code $} to the line feed (NMEA 0183, as openly described; from memory). */
    static final int LONGEST = 82;

    private static final String HEX = "0123456789ABCDEF";

    private final StringBuilder text = new StringBuilder(LONGEST);

    /** Begins a sentence; what stood here before is dropped. */
    SentenceWriter begin(String talker, String kind) {
        text.setLength(0);
        text.append('$').append(talker).append(kind);
        return this;
    }

    SentenceWriter empty() {
        text.append(',');
        return this;
    }

    SentenceWriter word(String field) {
        text.append(',').append(field);
        return this;
    }

    SentenceWriter letter(char field) {
        text.append(',').append(field);
        return this;
    }

    SentenceWriter whole(long field) {
        text.append(',').append(field);
        return this;
    }

    /** A whole number with leading zeros. */
    SentenceWriter padded(long field, int digits) {
        text.append(',');
        appendPadded(field, digits);
        return this;
    }

    SentenceWriter decimal(double field, int decimals) {
        text.append(',');
        FixedDecimals.append(text, field, decimals);
        return this;
    }

    SentenceWriter hex(long field) {
        text.append(',');
        int shift = 28;
        while (shift > 0 && (field >> shift & 0xf) == 0) {
            shift -= 4;
        }
        for (; shift >= 0; shift -= 4) {
            text.append(HEX.charAt((int) (field >> shift & 0xf)));
        }
        return this;
    }

    /** Time of day as {@code hhmmss.ss}. */
    SentenceWriter timeOfDay(long timeOfDayMs) {
        long hundredths = timeOfDayMs / 10;
        text.append(',');
        appendPadded(hundredths / 360_000, 2);
        appendPadded(hundredths / 6_000 % 60, 2);
        appendPadded(hundredths / 100 % 60, 2);
        text.append('.');
        appendPadded(hundredths % 100, 2);
        return this;
    }

    /** An angle as degrees and minutes to five decimals, then the letter of its half of the globe in a field of its own. */
    SentenceWriter angle(double angleDeg, int degreeDigits, char positive, char negative) {
        long units = (long) Math.floor(Math.abs(angleDeg) * 6_000_000 + 0.5);
        text.append(',');
        appendPadded(units / 6_000_000, degreeDigits);
        appendPadded(units % 6_000_000 / 100_000, 2);
        text.append('.');
        appendPadded(units % 100_000, 5);
        return letter(angleDeg < 0 ? negative : positive);
    }

    /** The finished sentence. */
    byte[] end() {
        int sum = 0;
        for (int i = 1; i < text.length(); i++) {
            sum ^= text.charAt(i);
        }
        text.append('*')
                .append(HEX.charAt(sum >> 4))
                .append(HEX.charAt(sum & 0xf))
                .append("\r\n");
        if (text.length() > LONGEST) {
            throw new IllegalStateException("a sentence of " + text.length() + " characters: " + text);
        }
        return text.toString().getBytes(StandardCharsets.US_ASCII);
    }

    private void appendPadded(long value, int digits) {
        long scale = 1;
        for (int i = 1; i < digits; i++) {
            scale *= 10;
        }
        for (; scale > 0; scale /= 10) {
            text.append((char) ('0' + value / scale % 10));
        }
    }
}
