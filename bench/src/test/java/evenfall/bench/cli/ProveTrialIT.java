package evenfall.bench.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whole tests in the simulated yard: bytes on virtual ports, typed answers, a result, and what was true. */
class ProveTrialIT {
    @TempDir
    Path folder;

    private JsonNode result() throws IOException {
        return JsonMapper.builder()
                .build()
                .readTree(folder.resolve("result.json").toFile());
    }

    private Captured trial(String what) {
        return Captured.run(
                "prove",
                what,
                "--trial",
                "7",
                "--result",
                folder.resolve("result.json").toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"flow", "height"})
    void theYardsHiddenConstantIsFoundThroughAVirtualPort(String what) throws IOException {
        Captured trial = trial(what);
        assertThat(trial.status()).as(trial.out() + trial.err()).isZero();
        assertThat(trial.out()).contains("PASS  " + what, "The yard's truth: ", "which holds it.");
        assertThat(result().path("simulated").asBoolean()).isTrue();
        assertThat(result().path("trial_seed").asLong()).isEqualTo(7);
    }

    @Test
    void theYardsPortsAreNamedByWhatTalksOnThem() throws IOException {
        Captured trial = trial("wiring");
        assertThat(trial.status()).as(trial.out() + trial.err()).isZero();
        assertThat(result().path("result").path("lines"))
                .extracting(line -> line.path("talks").asText())
                .containsExactlyInAnyOrder("hub", "receiver", "noise");
    }

    @Test
    void theYardsWornAndBlockedOutletsAreNamed() {
        Captured trial = trial("outlets");
        assertThat(trial.status()).isEqualTo(1);
        assertThat(trial.out()).contains("Replace (worn, or the wrong size): ", "Blocked: take out");
    }
}
