package evenfall.message;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import evenfall.judge.AlertKind;
import evenfall.monitor.Live;
import evenfall.sense.Unknown;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PayloadSchemaTest {
    private static final JsonMapper JSON = JsonMapper.builder().build();
    private final Messages messages = new Messages(Examples.RIG);

    private byte[] live(Live live) {
        return JsonText.document(json -> messages.live(json, live));
    }

    @Test
    void aLivePayloadWithEverythingKnownKeepsToItsSchema() {
        assertThat(violations("live", live(Examples.known(12_400_000)))).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(Unknown.class)
    void aLivePayloadWithNothingKnownKeepsToItsSchema(Unknown reason) {
        assertThat(violations("live", live(Examples.unknown(reason, 1_200_000))))
                .isEmpty();
        assertThat(violations("live", live(Examples.unknown(reason, -1)))).isEmpty();
    }

    @Test
    void alertPayloadsKeepToTheirSchemaInEveryState() {
        for (var alert : List.of(Examples.WING_LOW, Examples.SILENT)) {
            assertThat(violations("alert", messages.raised(alert))).isEmpty();
            assertThat(violations("alert", messages.cleared(alert, 13_000_000))).isEmpty();
            assertThat(violations("alert", messages.ended(alert, 13_000_000))).isEmpty();
        }
    }

    @Test
    void statusPayloadsKeepToTheirSchemaInEveryState() {
        for (Status.State state : Status.State.values()) {
            assertThat(violations("status", messages.status(Examples.status(state))))
                    .isEmpty();
        }
        assertThat(violations("status", messages.gone(12_000_000))).isEmpty();
    }

    @Test
    void theSchemasRefuseSilentGaps() throws IOException {
        ObjectNode live = (ObjectNode) JSON.readTree(live(Examples.unknown(Unknown.SILENT, 0)));
        ((ObjectNode) live.get("speed_mps")).remove("why");
        assertThat(violations("live", JSON.writeValueAsBytes(live)))
                .as("null without a reason")
                .isNotEmpty();

        live = (ObjectNode) JSON.readTree(live(Examples.unknown(Unknown.SILENT, 0)));
        ((ObjectNode) live.get("boom")).remove("why");
        assertThat(violations("live", JSON.writeValueAsBytes(live)))
                .as("measures without a reason")
                .isNotEmpty();

        ObjectNode alert = (ObjectNode) JSON.readTree(messages.cleared(Examples.WING_LOW, 1));
        alert.putNull("cleared_s");
        assertThat(violations("alert", JSON.writeValueAsBytes(alert)))
                .as("cleared, but not when")
                .isNotEmpty();

        ObjectNode status = (ObjectNode) JSON.readTree(messages.gone(1));
        status.put("at_s", 0);
        assertThat(violations("status", JSON.writeValueAsBytes(status)))
                .as("a time for what has none")
                .isNotEmpty();
    }

    @Test
    void theSchemasKnowExactlyTheAlertKindsOfTheProgram() throws IOException {
        List<String> known = new ArrayList<>();
        schemaText("alert").at("/properties/kind/enum").forEach(kind -> known.add(kind.asText()));
        List<String> live = new ArrayList<>();
        schemaText("live")
                .at("/properties/standing/items/properties/kind/enum")
                .forEach(kind -> live.add(kind.asText()));
        List<String> program = new ArrayList<>();
        for (AlertKind kind : AlertKind.values()) {
            program.add(kind.word());
        }
        assertThat(known).containsExactlyElementsOf(program);
        assertThat(live).containsExactlyElementsOf(program);
    }

    private static List<String> violations(String schema, byte[] payload) {
        try {
            JsonSchema rules = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                    .getSchema(schemaText(schema));
            List<String> found = new ArrayList<>();
            rules.validate(JSON.readTree(new String(payload, StandardCharsets.UTF_8)))
                    .forEach(violation -> found.add(violation.getMessage()));
            return found;
        } catch (IOException e) {
            throw new AssertionError("not JSON: " + new String(payload, StandardCharsets.UTF_8), e);
        }
    }

    private static JsonNode schemaText(String name) throws IOException {
        return JSON.readTree(Files.readString(Path.of("docs", name + ".schema.json")));
    }
}
