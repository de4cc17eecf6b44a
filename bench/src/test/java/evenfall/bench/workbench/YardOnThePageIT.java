package evenfall.bench.workbench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tests with boards and drives, led to their ends as a page leads them, in real time. */
class YardOnThePageIT {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    @TempDir
    private Path folder;

    private static JsonNode ask(Workbench bench, String path, String body) throws Exception {
        Answer answer = bench.answer(body.isEmpty() ? "GET" : "POST", path, body.getBytes(StandardCharsets.UTF_8));
        assertThat(answer.status()).as(body + ": " + answer.text()).isEqualTo(200);
        return JSON.readTree(answer.text());
    }

    private static JsonNode act(Workbench bench, JsonNode view, String what) throws Exception {
        return ask(
                bench,
                "/bench/proofs/" + view.path("id").asText(),
                "{\"number\":" + view.path("number").asInt() + ",\"do\":\"" + what + "\"}");
    }

    private static JsonNode look(Workbench bench, JsonNode view) throws Exception {
        return ask(bench, "/bench/proofs/" + view.path("id").asText(), "");
    }

    private static boolean goesOn(JsonNode step) {
        String key = step.path("key").asText();
        if (key.startsWith("sensors[") && key.indexOf('.') < 0) {
            return false;
        }
        // Three runs on one flow or ground are the fewest; the yard's hands make them apart enough to want more.
        return key.startsWith("runs[")
                ? key.compareTo("runs[3]") <= 0
                : step.path("usual").asBoolean();
    }

    private static JsonNode recorded(Workbench bench, JsonNode begun) throws Exception {
        if (begun.path("recording").path("state").asText().equals("starting")) {
            await().atMost(Duration.ofSeconds(20))
                    .until(() -> !look(bench, begun)
                            .path("recording")
                            .path("state")
                            .asText()
                            .equals("starting"));
        }
        boolean byPerson =
                look(bench, begun).path("recording").path("by_person").asBoolean();
        await().atMost(Duration.ofSeconds(60))
                .pollInterval(Duration.ofMillis(200))
                .until(() -> {
                    JsonNode recording = look(bench, begun).path("recording");
                    return recording.isMissingNode()
                            || byPerson
                                    && recording.path("amount").asDouble() > 0
                                    && recording.path("so_far").asText().endsWith("at rest");
                });
        if (byPerson) {
            act(bench, begun, "stop");
            await().atMost(Duration.ofSeconds(20))
                    .until(() -> !look(bench, begun).has("recording"));
        }
        return look(bench, begun);
    }

    private JsonNode prove(Workbench bench, String prover) throws Exception {
        JsonNode view =
                ask(bench, "/bench/proofs", "{\"prover\":\"" + prover + "\",\"source\":\"simulated\",\"seed\":7}");
        for (int i = 0; i < 200 && !view.path("step").path("type").asText().equals("finished"); i++) {
            assertThat(view.path("said").isNull()).as(view.toString()).isTrue();
            JsonNode step = view.path("step");
            view = switch (step.path("type").asText()) {
                case "ask" ->
                    act(
                            bench,
                            view,
                            "reply\",\"text\":\""
                                    + (step.path("key").asText().matches(".*[.](ground|flow)")
                                            ? "hard"
                                            : view.path("reading").asText("")));
                case "more" -> act(bench, view, "reply\",\"text\":\"" + (goesOn(step) ? "yes" : "no"));
                default -> recorded(bench, act(bench, view, "record"));
            };
        }
        return view;
    }

    @Test
    void aFlowMetersHiddenConstantIsFoundByStoppingWhenAllIsAtRest() throws Exception {
        try (Workbench bench = new Workbench(Optional.empty(), List.of(), folder)) {
            JsonNode end = prove(bench, "flow");
            assertThat(end.path("truth").toString()).contains("which holds it");
            JsonNode written =
                    ask(bench, "/bench/kept/" + end.path("result").path("file").asText(), "");
            assertThat(written.path("simulated").asBoolean()).isTrue();
            assertThat(written.path("trial_seed").asLong()).isEqualTo(7);
        }
    }

    @Test
    void aHeightSensorsHiddenOffsetIsFound() throws Exception {
        try (Workbench bench = new Workbench(Optional.empty(), List.of(), folder)) {
            JsonNode end = prove(bench, "height");
            assertThat(end.path("truth").toString()).contains("which holds it");
        }
    }

    @Test
    void aWheelsHiddenPulsesAreFound() throws Exception {
        try (Workbench bench = new Workbench(Optional.empty(), List.of(), folder)) {
            JsonNode end = prove(bench, "speed");
            assertThat(end.path("result").path("constants").get(0).path("key").asText())
                    .isEqualTo("pulses_per_m");
        }
    }

    @Test
    void theWornAndTheBlockedOutletAreNamed() throws Exception {
        try (Workbench bench = new Workbench(Optional.empty(), List.of(), folder)) {
            JsonNode result = prove(bench, "outlets").path("result");
            assertThat(result.path("passed").asBoolean()).isFalse();
            assertThat(result.path("advice").toString()).contains("worn", "Blocked");
        }
    }

    @Test
    void theSimulatedHubSpeaksOfEverythingFitted() throws Exception {
        try (Workbench bench = new Workbench(Optional.empty(), List.of(), folder)) {
            JsonNode begun = ask(bench, "/bench/signals", "{\"source\":\"simulated\"}");
            assertThat(begun.path("simulated").asBoolean()).isTrue();
            String path = "/bench/signals/" + begun.path("id").asText();
            for (String kind : List.of("flow", "pressure", "height", "wheel", "receiver", "air", "hub")) {
                await(kind).atMost(Duration.ofSeconds(10)).until(() -> {
                    for (JsonNode one : ask(bench, path, "").path("signals")) {
                        if (one.path("kind").asText().equals(kind)
                                && one.path("value").isNumber()) {
                            return true;
                        }
                    }
                    return false;
                });
            }
        }
    }
}
