package evenfall.message;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The contract for others against what the program does. */
class AsyncApiTest {
    private JsonNode document;

    @BeforeEach
    void read() throws Exception {
        document = YAMLMapper.builder()
                .build()
                .readTree(Path.of("docs", "asyncapi.yaml").toFile());
    }

    @Test
    void itNamesItsEditionAndItself() {
        assertThat(document.path("asyncapi").asText()).isEqualTo("3.1.0");
        assertThat(document.at("/info/title").asText()).isNotEmpty();
        assertThat(document.at("/info/version").asText()).isNotEmpty();
    }

    @Test
    void itsAddressesAreThoseThatTheProgramPublishesTo() {
        Topics topics = new Topics("example-36");
        assertThat(address("status")).isEqualTo(topics.status());
        assertThat(address("live")).isEqualTo(topics.live());
        assertThat(address("ledger")).isEqualTo(topics.ledger());
        assertThat(address("pass")).isEqualTo(topics.pass());
        assertThat(address("alert").replace("{kind}", "wing-low").replace("{place}", "left"))
                .isEqualTo(topics.alert(Examples.WING_LOW));
    }

    @Test
    void everyReferenceLeadsSomewhere() {
        List<String> references = new ArrayList<>();
        collect(document, references);
        assertThat(references).isNotEmpty().allSatisfy(reference -> {
            if (reference.startsWith("#")) {
                assertThat(document.at(reference.substring(1)).isMissingNode()).isFalse();
            } else {
                assertThat(Path.of("docs").resolve(reference)).isRegularFile();
            }
        });
    }

    @Test
    void theBoxOnlySends() {
        assertThat(document.path("operations"))
                .isNotEmpty()
                .allSatisfy(operation ->
                        assertThat(operation.path("action").asText()).isEqualTo("send"));
    }

    private String address(String channel) {
        return document.at("/channels/" + channel + "/address").asText().replace("{rig}", "example-36");
    }

    private static void collect(JsonNode node, List<String> references) {
        if (node.has("$ref")) {
            references.add(node.get("$ref").asText());
        }
        node.forEach(child -> collect(child, references));
    }
}
