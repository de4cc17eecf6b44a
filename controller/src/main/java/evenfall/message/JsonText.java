package evenfall.message;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import evenfall.quantity.FixedDecimals;
import evenfall.sense.Quantity;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.jspecify.annotations.Nullable;

/** One JSON document in the making. Every number passes {@link FixedDecimals}. */
final class JsonText {
    private static final JsonFactory FACTORY = new JsonFactory();
    private static final double US_PER_S = 1e6;

    /** Room for the longest number that {@link FixedDecimals} writes. */
    private static final int LONGEST_NUMBER = 24;

    private final JsonGenerator out;
    private final StringBuilder digits = new StringBuilder(LONGEST_NUMBER);
    private final char[] chars = new char[LONGEST_NUMBER];

    private JsonText(JsonGenerator out) {
        this.out = out;
    }

    @FunctionalInterface
    interface Body {
        void write(JsonText json) throws IOException;
    }

    /** A document that is one object. */
    static byte[] document(Body body) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(2048);
        try (JsonGenerator generator = FACTORY.createGenerator(bytes)) {
            generator.writeStartObject();
            body.write(new JsonText(generator));
            generator.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException("memory refused a write", e);
        }
        return bytes.toByteArray();
    }

    void object(String key, Body body) throws IOException {
        out.writeObjectFieldStart(key);
        body.write(this);
        out.writeEndObject();
    }

    /** One more object of the list that is open. */
    void entry(Body body) throws IOException {
        out.writeStartObject();
        body.write(this);
        out.writeEndObject();
    }

    /** One more whole number of the list that is open; null for one that is not known. */
    void element(@Nullable Long value) throws IOException {
        if (value == null) {
            out.writeNull();
        } else {
            out.writeNumber(value);
        }
    }

    void list(String key, Body body) throws IOException {
        out.writeArrayFieldStart(key);
        body.write(this);
        out.writeEndArray();
    }

    void text(String key, @Nullable String value) throws IOException {
        if (value == null) {
            out.writeNullField(key);
        } else {
            out.writeStringField(key, value);
        }
    }

    void flag(String key, boolean value) throws IOException {
        out.writeBooleanField(key, value);
    }

    void count(String key, long value) throws IOException {
        out.writeNumberField(key, value);
    }

    void number(String key, @Nullable Double value, int decimals) throws IOException {
        out.writeFieldName(key);
        if (value == null) {
            out.writeNull();
        } else {
            digits.setLength(0);
            FixedDecimals.append(digits, value, decimals);
            int length = digits.length();
            digits.getChars(0, length, chars, 0);
            out.writeNumber(chars, 0, length);
        }
    }

    /** Microseconds as seconds to the millisecond. */
    void seconds(String key, long timeUs) throws IOException {
        number(key, timeUs / US_PER_S, 3);
    }

    /** Microseconds as seconds; null for -1, which stands for never. */
    void age(String key, long ageUs) throws IOException {
        number(key, ageUs < 0 ? null : ageUs / US_PER_S, 2);
    }

    /**
     * A quantity as value, standard deviation and age, or as null, reason and age.
     *
     * @param perUnit SI size of one unit of the key
     */
    void quantity(String key, Quantity quantity, double perUnit, int decimals) throws IOException {
        object(key, json -> {
            Double value = quantity.value();
            json.number("value", value == null ? null : value / perUnit, decimals);
            if (value != null) {
                json.number("sd", quantity.sd() / perUnit, decimals + 1);
            }
            if (quantity.unknown() != null) {
                json.text("why", quantity.unknown().words());
            }
            json.age("age_s", quantity.ageUs());
        });
    }
}
