package evenfall.bench.workbench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import evenfall.bench.console.ConsolePage;
import evenfall.sim.feed.VirtualPort;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The bench page's server over real HTTP, with what is typed and with a virtual port. */
class WorkbenchHttpIT {
    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final String NO_PORT = "/dev/evenfall-no-such-port";

    private final HttpClient client = HttpClient.newHttpClient();

    @TempDir
    private Path folder;

    private VirtualPort wire;
    private ConsolePage page;

    @BeforeEach
    void open() throws Exception {
        wire = VirtualPort.open();
        page = page();
    }

    private ConsolePage page() throws Exception {
        ConsolePage fresh = new ConsolePage(
                "127.0.0.1",
                0,
                Optional.empty(),
                new Workbench(Optional.empty(), List.of(wire.path().toString(), NO_PORT), folder));
        fresh.start();
        return fresh;
    }

    @AfterEach
    void close() throws Exception {
        page.close();
        wire.close();
    }

    private HttpResponse<String> send(String path, String body) throws Exception {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(page.address() + path));
        return client.send(
                (body == null ? request : request.POST(HttpRequest.BodyPublishers.ofString(body))).build(),
                HttpResponse.BodyHandlers.ofString());
    }

    private JsonNode ok(String path, String body) throws Exception {
        HttpResponse<String> answer = send(path, body);
        assertThat(answer.statusCode())
                .as(path + " " + body + ": " + answer.body())
                .isEqualTo(200);
        return JSON.readTree(answer.body());
    }

    private void refused(int status, String sentence, String path, String body) throws Exception {
        HttpResponse<String> answer = send(path, body);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(status);
        assertThat(answer.body()).contains(sentence).endsWith(".\n");
    }

    private JsonNode begin(String prover, String source) throws Exception {
        return ok("bench/proofs", "{\"prover\":\"" + prover + "\"," + source + "}");
    }

    private JsonNode reply(JsonNode view, String text) throws Exception {
        return act(view, "reply\",\"text\":\"" + text);
    }

    private JsonNode act(JsonNode view, String what) throws Exception {
        return ok(
                "bench/proofs/" + view.path("id").asText(),
                "{\"number\":" + view.path("number").asInt() + ",\"do\":\"" + what + "\"}");
    }

    private JsonNode look(JsonNode view) throws Exception {
        return ok("bench/proofs/" + view.path("id").asText(), null);
    }

    @Test
    void aFlowMeterIsProvedByWhatIsTypedAndTheResultIsKeptBeyondARestart() throws Exception {
        JsonNode view = begin("flow", "\"source\":\"by_hand\"");
        assertThat(view.path("cautions").toString()).contains("Relieve the pressure before you open a line");
        assertThat(view.path("caution_now").asBoolean()).isTrue();
        for (String text : List.of("jug", "0.02 L", "0.01 L", "14 C")) {
            view = reply(view, text);
        }
        for (int run = 1; run <= 3; run++) {
            // 3000 pulses in 20 litres.
            for (String text : List.of("low", "0 L", "3000 in 60 s", "20 L", run < 3 ? "yes" : "no")) {
                if (text.startsWith("3000")) {
                    assertThat(view.path("caution_now").asBoolean())
                            .as("cautions where liquid runs")
                            .isTrue();
                    assertThat(view.path("can_record").asBoolean()).isFalse();
                }
                view = reply(view, text);
                assertThat(view.path("said").isNull()).as(view.toString()).isTrue();
            }
        }
        JsonNode result = view.path("result");
        assertThat(result.path("passed").asBoolean()).isTrue();
        JsonNode constant = result.path("constants").get(0);
        assertThat(Double.parseDouble(constant.path("text").asText())).isEqualTo(150);
        assertThat(constant.path("rig_place").asText()).isEqualTo("sensors.flow.pulses_per_L");

        String file = result.path("file").asText();
        JsonNode written = JSON.readTree(Files.readString(folder.resolve(file)));
        assertThat(written.path("simulated").asBoolean()).isFalse();
        assertThat(written.path("constants").get(0).path("pulses_per_L").asDouble())
                .isEqualTo(150);
        assertThat(folder.resolve(file + ".unfinished")).doesNotExist();

        page.close();
        page = page();
        assertThat(ok("bench/kept", null).path("kept").get(0).path("name").asText())
                .isEqualTo(file);
        HttpResponse<String> sheet = send("bench/kept/" + file.replace(".json", ".html"), null);
        assertThat(sheet.statusCode()).isEqualTo(200);
        assertThat(sheet.body()).contains("Proof: flow", "150");
        assertThat(sheet.headers().firstValue("Content-Security-Policy").orElse(""))
                .startsWith("default-src 'none'");
        assertThat(ok("bench/kept/" + file, null)).isEqualTo(written);
    }

    @Test
    void aReplyThatCannotBeUsedLeavesTheTestWhereItWas() throws Exception {
        JsonNode view = begin("flow", "\"source\":\"by_hand\"");
        view = reply(view, "jug");
        JsonNode refused = reply(view, "20");
        assertThat(refused.path("said").asText()).contains("has no unit").contains("Allowed: ");
        assertThat(refused.path("number").asInt()).isEqualTo(1);
        JsonNode taken = reply(refused, "0.02 L");
        assertThat(taken.path("said").isNull()).isTrue();
        assertThat(taken.path("given").get(1).path("text").asText()).isEqualTo("0.02 L");
        JsonNode back = act(taken, "back");
        assertThat(back.path("number").asInt()).isEqualTo(1);
        assertThat(back.path("given").size()).isEqualTo(1);
        String id = "bench/proofs/" + view.path("id").asText();
        refused(409, "answered already", id, "{\"do\":\"reply\",\"number\":5,\"text\":\"1 L\"}");
        refused(400, "not JSON", id, "nonsense");
        refused(400, "not a JSON object", id, "[]");
        refused(400, "allowed: reply, back", id, "{\"do\":\"dance\",\"number\":1}");
        refused(400, "up to 2000 letters", id, "{\"do\":\"reply\",\"number\":1,\"text\":7}");
        refused(409, "Nothing is to be recorded", id, "{\"do\":\"record\",\"number\":1}");
        refused(413, "too long", id, "{\"do\":\"reply\",\"number\":1,\"text\":\"" + "a".repeat(5000) + "\"}");
        assertThat(Files.list(folder).map(Path::getFileName).map(Path::toString))
                .as("what was answered is not lost with the page")
                .anyMatch(name -> name.endsWith(".unfinished"));
    }

    @Test
    void unitsChangeWhatIsAskedAndNotWhatWasAnswered() throws Exception {
        JsonNode view = reply(reply(begin("flow", "\"source\":\"by_hand\""), "scale"), "20 g");
        assertThat(view.path("step").path("example").asText()).isEqualTo("0.02 kg");
        JsonNode us = act(view, "units\",\"units\":\"us");
        assertThat(us.path("step").path("example").asText()).isEqualTo("0.05 lb");
        assertThat(us.path("given").get(1).path("text").asText()).isEqualTo("20 g");
    }

    @Test
    void aPortThatIsNotThereIsOneClearSentence() throws Exception {
        JsonNode view = begin("flow", "\"source\":\"port\",\"device\":\"" + NO_PORT + "\"");
        for (String text : List.of("jug", "0.02 L", "0.01 L", "14 C", "low", "0 L")) {
            view = reply(view, text);
        }
        assertThat(view.path("step").path("type").asText()).isEqualTo("measure");
        JsonNode tried = act(view, "record");
        await().atMost(Duration.ofSeconds(10)).until(() -> !look(tried).has("recording"));
        assertThat(look(tried).path("said").asText())
                .isEqualTo("There is no " + NO_PORT + ". Allowed: a port that is free and speaks.");
        assertThat(look(tried).path("number").asInt())
                .isEqualTo(view.path("number").asInt());
        assertThat(reply(look(tried), "3021 in 60.4 s").path("number").asInt())
                .as("what was read off can be typed instead")
                .isEqualTo(view.path("number").asInt() + 1);
    }

    @Test
    void onlyKnownPortsAndNamesAreTaken() throws Exception {
        refused(
                400,
                "no such port",
                "bench/proofs",
                "{\"prover\":\"flow\",\"source\":\"port\",\"device\":\"/etc/passwd\"}");
        refused(400, "no such port", "bench/signals", "{\"source\":\"port\",\"device\":\"/etc/passwd\"}");
        refused(400, "baud", "bench/signals", "{\"source\":\"port\",\"device\":\"" + NO_PORT + "\",\"baud\":1}");
        refused(400, "no such test", "bench/proofs", "{\"prover\":\"luck\",\"source\":\"simulated\"}");
        refused(400, "source cannot be used", "bench/proofs", "{\"prover\":\"flow\"}");
        refused(400, "seed", "bench/proofs", "{\"prover\":\"flow\",\"source\":\"simulated\",\"seed\":-1}");
        refused(400, "--rig", "bench/signals", "{\"source\":\"rig\"}");
        refused(404, "not open any longer", "bench/proofs/123e4567-e89b-12d3-a456-426614174000", null);
        refused(404, "not watched any longer", "bench/signals/123e4567-e89b-12d3-a456-426614174000", null);
        refused(404, "no such result", "bench/kept/prove-nothing.json", null);
        refused(404, "no such result", "bench/kept/pom.json", null);
        refused(404, "no such page", "bench/kept/..%2f..%2fpom.json", null);
        refused(405, "Only GET", "bench/about", "{}");
        refused(405, "Only POST", "bench/proofs", null);
    }

    @Test
    void aPageFromElsewhereIsRefused() throws Exception {
        HttpResponse<String> elsewhere = client.send(
                HttpRequest.newBuilder(URI.create(page.address() + "bench/proofs"))
                        .header("Origin", "http://elsewhere.example")
                        .POST(HttpRequest.BodyPublishers.ofString("{\"prover\":\"flow\",\"source\":\"by_hand\"}"))
                        .build(),
                HttpResponse.BodyHandlers.ofString());
        assertThat(elsewhere.statusCode()).isEqualTo(403);
    }

    @Test
    void aFewTestsAtATime() throws Exception {
        for (int i = 0; i < 6; i++) {
            begin("outlets", "\"source\":\"by_hand\"");
        }
        refused(503, "6 tests are open already", "bench/proofs", "{\"prover\":\"flow\",\"source\":\"by_hand\"}");
    }

    private static byte[] sentence(String body) {
        int sum = 0;
        for (int i = 0; i < body.length(); i++) {
            sum ^= body.charAt(i);
        }
        return String.format("$%s*%02X\r\n", body, sum).getBytes(StandardCharsets.US_ASCII);
    }

    private JsonNode signal(JsonNode view, String kind) {
        for (JsonNode one : view.path("signals")) {
            if (one.path("kind").asText().equals(kind)) {
                return one;
            }
        }
        throw new AssertionError("no " + kind + " in " + view);
    }

    @Test
    void aPortIsWatchedAndWhatGrowsOldIsNotKnown() throws Exception {
        JsonNode begun = ok("bench/signals", "{\"source\":\"port\",\"device\":\"" + wire.path() + "\"}");
        String path = "bench/signals/" + begun.path("id").asText();
        assertThat(signal(begun, "pressure").path("why").asText()).isEqualTo("nothing heard yet");
        await().until(() -> ok(path, null).path("ports").get(0).path("open").asBoolean());
        await().pollInterval(Duration.ofMillis(50)).until(() -> {
            wire.write(sentence("PEVFP,1000,8000"));
            return signal(ok(path, null), "pressure").path("value").asDouble() == 8;
        });
        wire.write("$PEVFP,2000,8000*00\r\n".getBytes(StandardCharsets.US_ASCII));
        await().until(() ->
                ok(path, null).path("ports").get(0).path("rejected_checksum").asLong() == 1);
        await().atMost(Duration.ofSeconds(5))
                .until(() -> signal(ok(path, null), "pressure").path("value").isNull());
        assertThat(signal(ok(path, null), "pressure").path("why").asText()).isEqualTo("silent");
        wire.close();
        await().atMost(Duration.ofSeconds(5))
                .until(() -> !ok(path, null).path("ports").get(0).path("open").asBoolean());
        assertThat(signal(ok(path, null), "pressure").path("why").asText()).contains("unplugged");
    }
}
