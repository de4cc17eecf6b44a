package evenfall.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import evenfall.ledger.LeafContact;
import evenfall.ledger.LedgerCell;
import evenfall.ledger.PassSummary;
import evenfall.monitor.LedgerScript;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the core really gives out, as messages. */
class LedgerMessagesTest {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    @Test
    void aCellWithEverythingKnownKeepsToItsSchemaAndSaysWhenAndWhere() throws Exception {
        LedgerScript script = new LedgerScript().run(4).end();
        JsonNode cell = cell(script, 5);

        assertThat(violations("ledger", cell)).isEmpty();
        assertThat(cell.path("pass").asInt()).isEqualTo(1);
        assertThat(cell.path("cell").asInt()).isEqualTo(5);
        assertThat(cell.path("from_m").asDouble()).isEqualTo(10);
        assertThat(cell.path("at_s").asDouble()).isBetween(2.0, 4.0);
        assertThat(cell.at("/ages/flow_s").isNumber()).isTrue();
        assertThat(cell.at("/place/latitude_deg").asDouble()).isEqualTo(52);
        assertThat(cell.at("/beside/why").asText()).contains("too coarse");
        assertThat(cell.path("row_share_permille"))
                .hasSize(192)
                .allSatisfy(share -> assertThat(share.asInt()).isBetween(850, 1150));
        assertThat(cell.path("rows_on").toString()).isEqualTo("[{\"first\":0,\"last\":191}]");
        assertThat(cell.at("/total/below_80_share").asDouble()).isZero();
        assertThat(cell.has("rows_why")).isFalse();
    }

    @Test
    void aCellStaysSmall() throws Exception {
        LedgerScript script = new LedgerScript().run(4).end();
        assertThat(bytes(script, 3).length).as("192 rows").isLessThan(2500);
    }

    @Test
    void theCaveatGoesWithEveryLeafContactNumber() throws Exception {
        LedgerScript script = new LedgerScript().run(4).end();
        assertThat(cell(script, 3).at("/leaf_contact/caveat").asText()).isEqualTo(LeafContact.CAVEAT);
        JsonNode pass = pass(script);
        for (String sums : List.of("/of_pass", "/total")) {
            assertThat(pass.at(sums + "/leaf_contact/index").asDouble()).isBetween(0.9, 1.1);
            assertThat(pass.at(sums + "/leaf_contact/why").asText()).contains("counts as 1");
            assertThat(pass.at(sums + "/leaf_contact/caveat").asText()).isEqualTo(LeafContact.CAVEAT);
        }
    }

    @Test
    void aPassSaysWhereItsLitresWent() throws Exception {
        JsonNode pass = pass(new LedgerScript().run(4).end());

        assertThat(violations("pass", pass)).isEmpty();
        assertThat(pass.path("ended_because").asText()).isEqualTo(PassSummary.End.WATCH_ENDED.words());
        JsonNode sums = pass.path("of_pass");
        assertThat(sums.path("overlap_ha").isNull())
                .as("by fixes too coarse for it")
                .isTrue();
        assertThat(sums.path("on_rows_L").asDouble()
                        + sums.path("beside_L").asDouble()
                        + sums.path("not_placed_L").asDouble())
                .isCloseTo(sums.path("metered_L").asDouble(), within(0.002));
    }

    @Test
    void whatIsNotKnownIsNullWithItsReason() throws Exception {
        LedgerScript script = new LedgerScript();
        script.withoutHeights();
        script.run(4).end();
        JsonNode cell = cell(script, 3);

        assertThat(violations("ledger", cell)).isEmpty();
        assertThat(cell.path("row_share_permille"))
                .allSatisfy(share -> assertThat(share.isNull()).isTrue());
        assertThat(cell.path("rows_why").asText()).isEqualTo("too few heights are known");
        assertThat(cell.at("/total/below_80_share").isNull()).isTrue();
        assertThat(cell.at("/total/why").asText()).isNotEmpty();
        assertThat(cell.at("/leaf_contact/index").isNull()).isTrue();
        JsonNode pass = pass(script);
        assertThat(violations("pass", pass)).isEmpty();
        assertThat(pass.at("/of_pass/not_placed")).anySatisfy(part -> {
            assertThat(part.path("why").asText()).isEqualTo("too few heights are known");
            assertThat(part.path("volume_L").asDouble()).isGreaterThan(1);
            assertThat(part.path("ground_ha").asDouble()).isGreaterThan(0.03);
        });
    }

    @Test
    void theSchemasRefuseSilentGaps() throws Exception {
        LedgerScript script = new LedgerScript().run(4).end();
        JsonNode cell = cell(script, 3);
        ((ArrayNode) cell.path("row_share_permille")).setNull(4);
        assertThat(violations("ledger", cell)).as("a row without a reason").isNotEmpty();
        cell = cell(script, 3);
        ((ObjectNode) cell.path("beside")).remove("why");
        assertThat(violations("ledger", cell)).as("overlap without a reason").isNotEmpty();
        cell = cell(script, 3);
        ((ObjectNode) cell.path("leaf_contact")).remove("caveat");
        assertThat(violations("ledger", cell))
                .as("leaf contact without its caveat")
                .isNotEmpty();
        JsonNode pass = pass(script);
        ((ObjectNode) pass.at("/total")).putNull("below_80_share");
        assertThat(violations("pass", pass)).as("shares without a reason").isNotEmpty();
        pass = pass(script);
        ((ObjectNode) pass.at("/of_pass")).remove("beside_why");
        assertThat(violations("pass", pass))
                .as("overlap of a pass without a reason")
                .isNotEmpty();
    }

    @Test
    void theyGoToTheirTopicsEachOfThemAndCountInTheDigest() throws Exception {
        LedgerScript script = new LedgerScript().run(4).end();
        OutputDigest digest = new OutputDigest();
        List<String> heard = new ArrayList<>();
        MessageSink sink = new MessageSink(script.rig, (topic, payload, retained, delivery) -> {
            digest.publish(topic, payload, retained, delivery);
            heard.add(topic + " " + retained + " " + delivery);
        });
        String before = digest.hex();
        for (LedgerCell cell : script.cells) {
            sink.cell(cell);
        }
        sink.pass(script.passes.get(0));

        assertThat(heard).hasSize(script.cells.size() + 1).contains("evenfall/example-36/ledger false EVERY");
        assertThat(heard.get(heard.size() - 1)).isEqualTo("evenfall/example-36/pass false EVERY");
        assertThat(digest.hex()).isNotEqualTo(before);
    }

    private static JsonNode cell(LedgerScript script, int number) throws IOException {
        return JSON.readTree(bytes(script, number));
    }

    private static byte[] bytes(LedgerScript script, int number) {
        return JsonText.document(json -> new LedgerMessages(script.rig).cell(json, script.cells.get(number)));
    }

    private static JsonNode pass(LedgerScript script) throws IOException {
        return JSON.readTree(new LedgerMessages(script.rig).pass(script.passes.get(0)));
    }

    private static List<String> violations(String schema, JsonNode payload) throws IOException {
        List<String> found = new ArrayList<>();
        JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                .getSchema(JSON.readTree(
                        Files.readString(Path.of("docs", schema + ".schema.json"), StandardCharsets.UTF_8)))
                .validate(payload)
                .forEach(violation -> found.add(violation.getMessage()));
        return found;
    }
}
