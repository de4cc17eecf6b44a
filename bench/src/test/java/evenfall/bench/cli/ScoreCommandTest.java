package evenfall.bench.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import evenfall.sim.scenario.Scenarios;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ScoreCommandTest {
    @TempDir
    Path folder;

    @Test
    void jsonIsTheOnlyThingOnStandardOutputAndProgressGoesToTheOther() throws Exception {
        Captured captured = Captured.run(
                "score",
                "--json",
                "--scenario",
                "level-field",
                "--outlets",
                "five-stream,streamer-bar",
                "--seeds",
                "1-2");
        JsonNode json = JsonMapper.builder().build().readTree(captured.out());
        assertThat(captured.status()).isZero();
        assertThat(captured.err()).contains("4 of 4 runs");
        assertThat(json.get("runs").asInt()).isEqualTo(4);
        assertThat(json.get("seeds")).hasSize(2);
        assertThat(json.get("scenarios")).hasSize(2);
        assertThat(json.at("/scenarios/0/false").asInt()).isZero();
        assertThat(json.at("/senses/0/quantity").asText()).isEqualTo("speed");
        assertThat(json.at("/senses/0/unit").asText()).isEqualTo("m/s");
        assertThat(json.at("/limits/0/reached").isNull()).as("no fault was run").isTrue();
    }

    @Test
    void aLimitThatIsNotMetIsStatusOneAndSaysSo() throws IOException {
        String text;
        try (var in = Scenarios.class.getResourceAsStream("level-field.yaml")) {
            text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        // The meter gives a tenth more pulses than the rig file says: the reported rate is 10 points off, and nobody
        // scripted a fault.
        Path file = Files.writeString(
                folder.resolve("meter.yaml"),
                text.replace("installed: as-believed", "installed: as-believed\n  fitted: {pulses_per_L: 165}"));
        Captured captured =
                Captured.run("score", "--scenario", file.toString(), "--outlets", "five-stream", "--seeds", "1");
        assertThat(captured.status()).isEqualTo(1);
        assertThat(captured.out().lines().filter(line -> line.contains("rate error in steady running")))
                .singleElement()
                .asString()
                .contains("at most 1.00 points", "not reached");
        assertThat(captured.out()).contains("not measured");
    }

    @Test
    void seedsHaveNamesThatDoNotOverlap() throws Exception {
        assertThat(Seeds.of("tuning")).containsExactly(1L, 2L, 3L, 4L, 5L);
        assertThat(Seeds.of("scoring")).containsExactly(101L, 102L, 103L, 104L, 105L);
        assertThat(Seeds.of("7")).containsExactly(7L);
        assertThat(Seeds.of("7-9")).containsExactly(7L, 8L, 9L);
    }

    @Test
    void oneLineAScenarioUsesItsOwnSeedAndOutlets() {
        Captured captured = Captured.run("score", "--scenarios-only", "--scenario", "level-field");
        assertThat(captured.out()).contains("each scenario's own seed", "level-field  five-stream");
        assertThat(captured.out().lines()).hasSize(3);
    }
}
