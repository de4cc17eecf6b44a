package evenfall.bench.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import org.junit.jupiter.api.Test;

class ScoreCommandTest {
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
    void aLimitThatIsNotMetIsStatusOne() {
        Captured captured = Captured.run("score", "--scenario", "washouts", "--outlets", "five-stream", "--seeds", "1");
        boolean missed = captured.out().contains("not reached");
        assertThat(captured.status()).isEqualTo(missed ? 1 : 0);
        assertThat(captured.out()).contains("to reach", "not measured");
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
