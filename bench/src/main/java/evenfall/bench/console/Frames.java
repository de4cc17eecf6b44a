package evenfall.bench.console;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;

/** Frames as they go to a page: {@code {"lane": ..., "topic": ..., "payload": ...}} in UTF-8, on one line. */
final class Frames {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private Frames() {}

    static byte[] of(String lane, String topic, JsonNode payload) {
        return of(lane, topic, bytes(payload));
    }

    /**
     * @param payload JSON as it was published; empty where a retained message is taken away
     */
    static byte[] of(String lane, String topic, byte[] payload) {
        ByteArrayOutputStream out = new ByteArrayOutputStream(payload.length + 80);
        try {
            out.write(("{\"lane\":\"" + lane + "\",\"topic\":\"" + topic + "\",\"payload\":")
                    .getBytes(StandardCharsets.UTF_8));
            out.write(payload.length == 0 ? "null".getBytes(StandardCharsets.US_ASCII) : payload);
            out.write('}');
        } catch (IOException e) {
            throw new IllegalStateException("memory cannot be written", e);
        }
        return out.toByteArray();
    }

    static byte[] bytes(JsonNode json) {
        try {
            return MAPPER.writeValueAsBytes(json);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of nodes could not be written as JSON", e);
        }
    }

    /** Reads what a page has sent. */
    static JsonNode read(byte[] body) throws Refusal {
        try {
            JsonNode json = MAPPER.readTree(body);
            if (json != null && json.isObject()) {
                return json;
            }
        } catch (IOException e) {
            throw new Refusal(400, "The request is not JSON.");
        }
        throw new Refusal(400, "The request is not a JSON object.");
    }
}
