package evenfall.message;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Held against Jackson's own writer, byte for byte. */
class JsonTextTest {
    /** One character of each kind that JSON or UTF-8 treats in its own way. */
    private static final int[] CHARACTERS = {
        'a', '~', 0x7F, '"', '\\', '/', 0, 1, '\b', '\t', '\n', '\f', '\r', 0x1F, 0x80, 'é', 0x7FF, 0x800, '€', 0xFFFF,
        0x1F69C
    };

    @Test
    void textsAreWrittenAsJacksonWritesThem() throws IOException {
        long seed = 12;
        Random random = new Random(seed);
        for (int round = 0; round < 2000; round++) {
            StringBuilder text = new StringBuilder();
            for (int n = random.nextInt(30); n > 0; n--) {
                text.appendCodePoint(CHARACTERS[random.nextInt(CHARACTERS.length)]);
            }
            String value = text.toString();
            assertThat(JsonText.document(json -> json.text("key", value)))
                    .as("seed %d, round %d", seed, round)
                    .isEqualTo(jackson(generator -> generator.writeStringField("key", value)));
        }
    }

    @Test
    void objectsAndListsNestAsJacksonNestsThem() throws IOException {
        assertThat(JsonText.document(json -> {
                    json.beginList("empty");
                    json.endList();
                    json.list("none", new int[0], 0);
                    json.list("numbers", new int[] {7, JsonText.UNKNOWN, 0, Integer.MAX_VALUE, 5}, 4);
                    json.beginList("list");
                    json.beginEntry();
                    json.endObject();
                    json.beginEntry();
                    json.flag("yes", true);
                    json.flag("no", false);
                    json.endObject();
                    json.endList();
                    json.beginObject("object");
                    json.unknown("one", "other");
                    json.number("known", true, 1.5, 2);
                    json.number("not", false, Double.NaN, 2);
                    json.endObject();
                    json.count("count", 12);
                }))
                .isEqualTo(jackson(generator -> {
                    generator.writeArrayFieldStart("empty");
                    generator.writeEndArray();
                    generator.writeArrayFieldStart("none");
                    generator.writeEndArray();
                    generator.writeArrayFieldStart("numbers");
                    generator.writeNumber(7);
                    generator.writeNull();
                    generator.writeNumber(0);
                    generator.writeNumber(Integer.MAX_VALUE);
                    generator.writeEndArray();
                    generator.writeArrayFieldStart("list");
                    generator.writeStartObject();
                    generator.writeEndObject();
                    generator.writeStartObject();
                    generator.writeBooleanField("yes", true);
                    generator.writeBooleanField("no", false);
                    generator.writeEndObject();
                    generator.writeEndArray();
                    generator.writeObjectFieldStart("object");
                    generator.writeNullField("one");
                    generator.writeNullField("other");
                    generator.writeFieldName("known");
                    generator.writeNumber("1.50");
                    generator.writeNullField("not");
                    generator.writeEndObject();
                    generator.writeNumberField("count", 12);
                }));
    }

    @Test
    void aLongDocumentAfterAShortOneAndAShortOneAfterAreWhole() throws IOException {
        JsonText json = new JsonText();
        for (int length : new int[] {3, 100_000, 3}) {
            String value = "ä\"".repeat(length);
            json.begin();
            json.text("key", value);
            json.end();
            assertThat(json.bytes()).isEqualTo(jackson(generator -> generator.writeStringField("key", value)));
        }
    }

    private interface Body {
        void write(JsonGenerator generator) throws IOException;
    }

    private static byte[] jackson(Body body) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (JsonGenerator generator = new JsonFactory().createGenerator(bytes)) {
            generator.writeStartObject();
            body.write(generator);
            generator.writeEndObject();
        }
        return bytes.toByteArray();
    }
}
