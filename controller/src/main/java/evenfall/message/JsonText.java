package evenfall.message;

import evenfall.quantity.FixedDecimals;
import evenfall.sense.Quantity;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * One JSON document in the making (RFC 8259), without blanks. Every number passes {@link FixedDecimals}.
 *
 * <p>It is written into a buffer that the next document is written over: five times a second a live message of some kilobytes would else
 * be most of what the core allocates. Who begins a document has it until the next one begins; what shall last is taken by {@link #bytes}
 * or as a {@link Payload}. For one thread.
 */
final class JsonText {
    private static final double US_PER_S = 1e6;

    /** Holds a live message of five height sensors; more make it grow once. */
    private static final int USUAL_BYTES = 4096;

    /** Around a key: comma, two quotes and a colon. */
    private static final int PUNCTUATION = 4;

    private static final String HEX_DIGITS = "0123456789ABCDEF";

    /** What is escaped by a letter, and by which. */
    private static final String SHORT_FORMS = "\"\\\b\t\n\f\r";

    private static final String SHORT_LETTERS = "\"\\btnfr";

    /** Stands in a {@link #list} for a number that is not known. */
    static final int UNKNOWN = -1;

    private byte[] out = new byte[USUAL_BYTES];
    private int length;

    /** Whether something stands before in the object or list that is open, so that a comma is due. */
    private boolean follows;

    /** A document that is one object, in an array of its own. */
    static byte[] document(Consumer<JsonText> body) {
        JsonText json = new JsonText();
        json.begin();
        body.accept(json);
        json.end();
        return json.bytes();
    }

    /** Begins a document that is one object; the one before is gone. */
    void begin() {
        length = 0;
        follows = false;
        open('{');
    }

    /** Ends the document. */
    void end() {
        shut('}');
    }

    /** The document as an array of its own. */
    byte[] bytes() {
        return Arrays.copyOf(out, length);
    }

    /** The document where it stands. */
    Payload payload() {
        return new Payload(out, length);
    }

    void beginObject(String key) {
        key(key);
        open('{');
    }

    /** One more object of the list that is open; it ends as any object. */
    void beginEntry() {
        comma();
        open('{');
    }

    void endObject() {
        shut('}');
    }

    void beginList(String key) {
        key(key);
        open('[');
    }

    void endList() {
        shut(']');
    }

    /**
     * A list of whole numbers, at once: a ledger cell has hundreds.
     *
     * @param values the first so many of them, 0 or more; {@link #UNKNOWN} becomes null
     */
    void list(String key, int[] values, int count) {
        beginList(key);
        byte[] bytes = room(count * (FixedDecimals.LONGEST + 1));
        int at = length;
        for (int i = 0; i < count; i++) {
            if (values[i] == UNKNOWN) {
                copy("null", bytes, at);
                at += 4;
            } else {
                at = FixedDecimals.write(bytes, at, values[i]);
            }
            bytes[at++] = ',';
        }
        length = count == 0 ? at : at - 1;
        endList();
    }

    void text(String key, @Nullable String value) {
        key(key);
        if (value == null) {
            plain("null");
            return;
        }
        put('"');
        if (isPlain(value)) {
            plain(value);
        } else {
            escaped(value);
        }
        put('"');
    }

    void flag(String key, boolean value) {
        key(key);
        plain(value ? "true" : "false");
    }

    void count(String key, long value) {
        key(key);
        length = FixedDecimals.write(room(FixedDecimals.LONGEST), length, value);
    }

    void number(String key, double value, int decimals) {
        key(key);
        length = FixedDecimals.write(room(FixedDecimals.LONGEST), length, value, decimals);
    }

    /** A number, or null where it is not known; what stands for it then is not looked at. */
    void number(String key, boolean known, double value, int decimals) {
        if (known) {
            number(key, value, decimals);
        } else {
            unknown(key);
        }
    }

    /** Null for each: why stands beside them. */
    void unknown(String... keys) {
        for (String key : keys) {
            unknown(key);
        }
    }

    /** Null: why stands beside it. */
    void unknown(String key) {
        key(key);
        plain("null");
    }

    /** Microseconds as seconds to the millisecond. */
    void seconds(String key, long timeUs) {
        number(key, timeUs / US_PER_S, 3);
    }

    /** Microseconds as seconds; null for -1, which stands for never. */
    void age(String key, long ageUs) {
        number(key, ageUs >= 0, ageUs / US_PER_S, 2);
    }

    /**
     * A quantity as value, standard deviation and age, or as null, reason and age.
     *
     * @param perUnit SI size of one unit of the key
     */
    void quantity(String key, Quantity quantity, double perUnit, int decimals) {
        beginObject(key);
        if (quantity.isKnown()) {
            number("value", quantity.get() / perUnit, decimals);
            number("sd", quantity.sd() / perUnit, decimals + 1);
        } else {
            unknown("value");
        }
        if (quantity.unknown() != null) {
            text("why", quantity.unknown().words());
        }
        age("age_s", quantity.ageUs());
        endObject();
    }

    private byte[] room(int more) {
        if (out.length - length < more) {
            out = Arrays.copyOf(out, Math.max(2 * out.length, length + more));
        }
        return out;
    }

    private void put(char ascii) {
        room(1)[length++] = (byte) ascii;
    }

    private void comma() {
        if (follows) {
            put(',');
        }
        follows = true;
    }

    private void open(char bracket) {
        put(bracket);
        follows = false;
    }

    private void shut(char bracket) {
        put(bracket);
        follows = true;
    }

    private void key(String key) {
        int characters = key.length();
        byte[] bytes = room(characters + PUNCTUATION);
        int at = length;
        if (follows) {
            bytes[at++] = ',';
        }
        follows = true;
        bytes[at++] = '"';
        copy(key, bytes, at);
        at += characters;
        bytes[at++] = '"';
        bytes[at++] = ':';
        length = at;
    }

    /** What is known to be printable ASCII that needs no escape, as our own keys and words are: copied in one go. */
    private void plain(String ascii) {
        copy(ascii, room(ascii.length()), length);
        length += ascii.length();
    }

    /** The method is frowned upon for other characters; for these it is right, and the one that neither allocates nor goes by single ones. */
    @SuppressWarnings("deprecation")
    private static void copy(String ascii, byte[] to, int at) {
        ascii.getBytes(0, ascii.length(), to, at);
    }

    private static boolean isPlain(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < ' ' || c > '~' || c == '"' || c == '\\') {
                return false;
            }
        }
        return true;
    }

    /** What the machine's own words and a fault's may bring; seldom, so it may allocate. */
    private void escaped(String text) {
        StringBuilder safe = new StringBuilder(text.length() + 16);
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            int shortForm = SHORT_FORMS.indexOf(c);
            if (shortForm >= 0) {
                safe.append('\\').append(SHORT_LETTERS.charAt(shortForm));
            } else if (c < ' ' || Character.isSurrogate(c)) {
                safe.append("\\u");
                for (int shift = 12; shift >= 0; shift -= 4) {
                    safe.append(HEX_DIGITS.charAt(c >> shift & 0xF));
                }
            } else {
                safe.append(c);
            }
        }
        byte[] bytes = safe.toString().getBytes(StandardCharsets.UTF_8);
        System.arraycopy(bytes, 0, room(bytes.length), length, bytes.length);
        length += bytes.length;
    }
}
