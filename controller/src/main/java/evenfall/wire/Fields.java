package evenfall.wire;

/**
 * Reads the fields of one sentence from left to right, straight from its bytes.
 *
 * <p>Errors stick: after the first field that is not what was asked for, {@link #good()} is false for the rest of the
 * sentence and every further read finds an empty field. So a decoder asks once, at its end.
 */
final class Fields {

    /** More digits would not fit a double exactly. */
    private static final long MANTISSA_LIMIT = 1_000_000_000_000_000L;

    /** Leading zeros count, so that no run of digits can overflow a long unseen. */
    private static final int DIGITS_LIMIT = 18;

    /** Ten decimals of an arc minute are a fifth of a micrometre. */
    private static final int DECIMALS_LIMIT = 10;

    private static final long[] POWER_OF_TEN = {
        1L, 10L, 100L, 1_000L, 10_000L, 100_000L, 1_000_000L, 10_000_000L, 100_000_000L, 1_000_000_000L, 10_000_000_000L
    };

    private static final long UINT32_MAX = 0xFFFF_FFFFL;

    private byte[] line = new byte[0];
    private int at;
    private int end;
    private boolean bad;
    private boolean ranOut;

    private long mantissa;
    private int decimals;
    private int wholeDigits;
    private long wholePart;
    private byte letter;

    /** Starts at the comma before the first field, or at the {@code *} where there is none. */
    void open(byte[] bytes, int comma, int star) {
        line = bytes;
        at = comma;
        end = star;
        bad = false;
        ranOut = false;
    }

    /** Returns whether another field follows, be it an empty one; never after an error, so that loops end. */
    boolean more() {
        return !bad && at < end;
    }

    /** Returns whether every field asked for was there and was what it was asked for as. */
    boolean good() {
        return !bad && !ranOut;
    }

    /** Says that the field just read is not what the table allows. */
    void refuse() {
        bad = true;
    }

    /** Returns how many fields are left. */
    int left() {
        int count = 0;
        for (int i = at; i < end; i++) {
            if (line[i] == ',') {
                count++;
            }
        }
        return count;
    }

    /** Passes over a field that nobody reads, whatever is in it. */
    void skip() {
        if (enter()) {
            leave();
        }
    }

    /** Passes over all fields that are left; receivers newer than the table may add some. */
    void skipRest() {
        while (more()) {
            skip();
        }
    }

    /** Reads a decimal number without a sign; false where the field is empty. */
    boolean unsigned() {
        return enter() && digits();
    }

    /** Reads a decimal number that may have a minus sign; false where the field is empty. */
    boolean signed() {
        if (!enter()) {
            return false;
        }
        if (at < end && line[at] == '-') {
            at++;
            if (!digits()) {
                bad = true;
                return false;
            }
            mantissa = -mantissa;
            return true;
        }
        return digits();
    }

    /** Reads a whole number from 0 to the limit; false where the field is empty. */
    boolean whole(long limit) {
        if (!unsigned()) {
            return false;
        }
        if (wholeDigits == 0 || line[at - 1] == '.' || decimals > 0 || mantissa > limit) {
            bad = true;
            return false;
        }
        return true;
    }

    /** Reads a 32-bit counter or tick. */
    boolean uint32() {
        return whole(UINT32_MAX);
    }

    /** Reads a whole number with a sign, between the limits; false where the field is empty. */
    boolean signedWhole(long low, long high) {
        if (!signed()) {
            return false;
        }
        if (wholeDigits == 0 || line[at - 1] == '.' || decimals > 0 || mantissa < low || mantissa > high) {
            bad = true;
            return false;
        }
        return true;
    }

    /** Reads one to eight hexadecimal digits; false where the field is empty. */
    boolean hex32() {
        if (!enter()) {
            return false;
        }
        int start = at;
        long value = 0;
        while (at < end && line[at] != ',') {
            int digit = hexDigit(line[at]);
            if (digit < 0 || at - start >= 8) {
                bad = true;
                return false;
            }
            value = value << 4 | digit;
            at++;
        }
        mantissa = value;
        decimals = 0;
        return at > start;
    }

    /**
     * Reads a word of lower-case letters, digits and hyphens into an array as long as a sentence; an empty word is refused.
     *
     * @return its length; 0 where it is refused
     */
    int word(byte[] to) {
        if (!enter()) {
            return 0;
        }
        int start = at;
        while (at < end && isOfWord(line[at])) {
            to[at - start] = line[at];
            at++;
        }
        if (at == start || (at < end && line[at] != ',')) {
            bad = true;
            return 0;
        }
        return at - start;
    }

    static boolean isOfWord(int c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
    }

    /** Reads a field of one character; false where the field is empty. */
    boolean letter() {
        if (!enter()) {
            return false;
        }
        if (at >= end || line[at] == ',') {
            return false;
        }
        letter = line[at];
        at++;
        if (at < end && line[at] != ',') {
            bad = true;
            return false;
        }
        return true;
    }

    /** Reads a field of one capital letter; false where the field is empty. */
    boolean capital() {
        if (!letter()) {
            return false;
        }
        if (letter < 'A' || letter > 'Z') {
            bad = true;
            return false;
        }
        return true;
    }

    /** Reads a field that may hold this letter or nothing. */
    void letterOrEmpty(char wanted) {
        if (letter() && letter != wanted) {
            bad = true;
        }
    }

    /** Returns the letter read last. */
    char letterRead() {
        return (char) letter;
    }

    /** Returns the number read last as a whole number of {@code 10^-decimals()}. */
    long mantissa() {
        return mantissa;
    }

    /** Returns the part of the number read last, a number without sign, that stood before its point. */
    long wholePart() {
        return wholePart;
    }

    /** Returns the part after its point, as a whole number of {@code 10^-decimals()}. */
    long fraction() {
        return mantissa - wholePart * scale();
    }

    /** Returns the power of ten that divides {@link #mantissa()}. */
    long scale() {
        return POWER_OF_TEN[decimals];
    }

    /** Returns how many decimals the number read last was printed with. */
    int decimals() {
        return decimals;
    }

    /** Returns how many digits the number read last had before its point. */
    int wholeDigits() {
        return wholeDigits;
    }

    /** Returns the number read last; exact to the last bit of a double, since both parts are exact and divided once. */
    double value() {
        return (double) mantissa / POWER_OF_TEN[decimals];
    }

    /** Refuses a number above the limit. */
    void atMost(long limit) {
        if (mantissa > limit * POWER_OF_TEN[decimals]) {
            bad = true;
        }
    }

    /** Steps over the comma before a field. */
    private boolean enter() {
        if (bad) {
            return false;
        }
        if (at >= end) {
            ranOut = true;
            return false;
        }
        at++;
        return true;
    }

    private void leave() {
        while (at < end && line[at] != ',') {
            if (line[at] == '*') {
                bad = true;
            }
            at++;
        }
    }

    private boolean digits() {
        byte[] bytes = line;
        int last = end;
        int start = at;
        int i = start;
        long value = 0;
        int digit = -1;
        while (i < last && (digit = bytes[i] - '0') >= 0 && digit <= 9) {
            value = value * 10 + digit;
            i++;
        }
        wholeDigits = i - start;
        wholePart = value;
        decimals = 0;
        if (i < last && digit == '.' - '0') {
            i++;
            int point = i;
            while (i < last && (digit = bytes[i] - '0') >= 0 && digit <= 9) {
                value = value * 10 + digit;
                i++;
            }
            decimals = i - point;
        }
        at = i;
        if (i == start && (i == last || digit == ',' - '0')) {
            return false;
        }
        int digits = wholeDigits + decimals;
        // The value may have overflowed where there are more digits than a long holds: count them first.
        boolean bounded = digits > 0 && digits <= DIGITS_LIMIT && decimals <= DECIMALS_LIMIT;
        if (!bounded || value >= MANTISSA_LIMIT || (i < last && digit != ',' - '0')) {
            bad = true;
            return false;
        }
        mantissa = value;
        return true;
    }
    /** Returns the value of a hexadecimal digit of either case, or a negative number where it is none. */
    static int hexDigit(byte c) {
        if (c >= '0' && c <= '9') {
            return c - '0';
        }
        if (c >= 'A' && c <= 'F') {
            return c - 'A' + 10;
        }
        if (c >= 'a' && c <= 'f') {
            return c - 'a' + 10;
        }
        return -1;
    }
}
