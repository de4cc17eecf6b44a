package evenfall.bench.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import evenfall.bench.run.ControllerProcess;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/**
 * Ten seconds over a terrace, once at real pace: the controller's own process on pseudo-terminals, an embedded broker, arrival
 * times. What it said is then held against the same bytes at pace max, and against the controller's jar alone.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class RunIT {
    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final Pattern DIGEST = Pattern.compile("[0-9a-f]{64}");

    /**
     * The monitor judges on a grid of 0.2 s of its own clock, which begins when its process does: against the scenario's clock the
     * grid is shifted by up to 0.2 s, and the hold of a second is counted on it, 0.2 s more. Bytes on a pty and messages through a
     * broker were at most 0.15 s behind the quickest on a machine of two cores with other work; 0.2 s are allowed.
     */
    private static final double ALERT_S = 0.2 + 0.2 + 0.2;

    /**
     * The same shift puts live messages at other moments of a boom that heaves, so the mean over 50 of them moves. Three times what
     * was seen in five runs: 0.005 of row CV, and 0.04 points of rate error.
     */
    private static final double MEAN_CV = 0.015;

    private static final double MEAN_RATE_POINTS = 0.12;

    @TempDir
    static Path folder;

    private Path scenario;
    private Path kept;
    private Captured real;
    private JsonNode realResult;

    @BeforeAll
    void driveOnceAtRealPace() throws IOException {
        scenario = folder.resolve("short-terrace.yaml");
        try (InputStream in = RunIT.class.getResourceAsStream("/evenfall/bench/short-terrace.yaml")) {
            Files.write(scenario, in.readAllBytes());
        }
        kept = folder.resolve("kept");
        real = Captured.run("run", scenario.toString(), "--json", "--keep", kept.toString());
        assertThat(real.status()).as(real.err()).isZero();
        realResult = JSON.readTree(real.out());
    }

    private static List<JsonNode> sorted(JsonNode alerts) {
        List<JsonNode> list = new ArrayList<>();
        alerts.forEach(list::add);
        list.sort(Comparator.comparing(
                        (JsonNode a) -> a.get("kind").asText() + a.get("place").asText())
                .thenComparingDouble(a -> a.get("due_s").asDouble()));
        return list;
    }

    @Test
    void bothPacesGiveTheSameAlertsAndFiguresWithinTheJitterOfArrival() throws IOException {
        Captured max = Captured.run("run", scenario.toString(), "--json", "--pace", "max");
        assertThat(max.status()).as(max.err()).isZero();
        JsonNode maxResult = JSON.readTree(max.out());
        assertThat(realResult.get("truth"))
                .as("the truth does not hang on the pace")
                .isEqualTo(maxResult.get("truth"));
        List<JsonNode> realAlerts = sorted(realResult.at("/score/alerts"));
        List<JsonNode> maxAlerts = sorted(maxResult.at("/score/alerts"));
        assertThat(realAlerts)
                .as("%s against %s", realAlerts, maxAlerts)
                .hasSameSizeAs(maxAlerts)
                .isNotEmpty();
        for (int i = 0; i < realAlerts.size(); i++) {
            JsonNode one = realAlerts.get(i);
            JsonNode other = maxAlerts.get(i);
            assertThat(one.get("kind")).isEqualTo(other.get("kind"));
            assertThat(one.get("place")).isEqualTo(other.get("place"));
            assertThat(one.get("due_s")).isEqualTo(other.get("due_s"));
            assertThat(one.get("raised_s").asDouble())
                    .as("%s against %s", one, other)
                    .isCloseTo(other.get("raised_s").asDouble(), within(ALERT_S));
        }
        assertThat(realResult.at("/score/missed")).isEqualTo(maxResult.at("/score/missed"));
        assertThat(realResult.at("/score/false")).isEqualTo(maxResult.at("/score/false"));
        assertThat(realResult.at("/reported/row_cv/mean").asDouble())
                .isCloseTo(maxResult.at("/reported/row_cv/mean").asDouble(), within(MEAN_CV));
        assertThat(realResult.at("/reported/rate_error_pct/mean").asDouble())
                .isCloseTo(maxResult.at("/reported/rate_error_pct/mean").asDouble(), within(MEAN_RATE_POINTS));
    }

    @Test
    void theResultHasExactlyTheKeysOfTheContractAndProgressStaysOnStandardError() {
        assertThat(names(realResult))
                .containsExactly("scenario", "seed", "seconds", "outlet", "truth", "reported", "score");
        assertThat(names(realResult.get("truth"))).containsExactly("rate_error_pct", "row_cv");
        assertThat(names(realResult.at("/truth/rate_error_pct"))).containsExactly("mean", "p95_abs");
        assertThat(names(realResult.at("/reported/row_cv"))).containsExactly("mean", "p95");
        assertThat(names(realResult.get("score")))
                .containsExactly("rate_error_points_p95", "row_cv_points_p95", "alerts", "missed", "false");
        assertThat(names(realResult.at("/score/alerts/0")))
                .containsExactly("kind", "place", "due_s", "raised_s", "cleared_s");
        assertThat(real.err()).contains("5 of 10 s");
    }

    @Test
    void theControllerSJarAloneRepeatsTheRealSessionByteForByte() throws Exception {
        String said = last(Files.readString(kept.resolve("monitor.txt")));
        Replayed blind = replayBlind(kept.resolve("rig.yaml"), kept.resolve("trace.txt"));
        assertThat(blind.digest())
                .as("the jar's replay against what it said itself: %s", said)
                .isEqualTo(digest(said));
        Captured bench = Captured.run(
                "replay",
                "--json",
                "--rig",
                kept.resolve("rig.yaml").toString(),
                kept.resolve("trace.txt").toString());
        assertThat(JSON.readTree(bench.out()).get("digest").asText()).isEqualTo(blind.digest());
        List<String> heard = heardAtTheBroker();
        assertThat(heard).hasSizeGreaterThan(40);
        assertThat(blind.messages()).as("every byte that came by the broker").containsAll(heard);
    }

    @Test
    void theControllerSJarAloneRepeatsASimulatedTraceByteForByte() throws Exception {
        Path max = folder.resolve("kept-max");
        Captured run = Captured.run("run", scenario.toString(), "--json", "--pace", "max", "--keep", max.toString());
        assertThat(run.status()).as(run.err()).isZero();
        Path trace = folder.resolve("fed.txt.gz");
        Captured fed = Captured.run("feed", scenario.toString(), "--trace", trace.toString(), "--json");
        assertThat(fed.status()).as(fed.err()).isZero();
        Replayed blind = replayBlind(max.resolve("rig.yaml"), trace);
        List<String> messages = new ArrayList<>();
        for (String line : Files.readAllLines(max.resolve("messages.txt"))) {
            messages.add(line.substring(line.indexOf(' ') + 1));
        }
        assertThat(blind.messages()).isEqualTo(messages);
    }

    private List<String> heardAtTheBroker() throws IOException {
        List<String> heard = new ArrayList<>();
        for (String line : Files.readAllLines(kept.resolve("messages.txt"))) {
            String message = line.substring(line.indexOf(' ') + 1);
            if (!message.contains("/status ")) {
                heard.add(message);
            }
        }
        return heard;
    }

    private record Replayed(List<String> messages, String digest) {}

    /** A process with nothing but the controller's jar on its class path. */
    private Replayed replayBlind(Path rig, Path trace) throws Exception {
        Path out = folder.resolve("blind-out.txt");
        Path err = folder.resolve("blind-err.txt");
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        ControllerProcess.jar().toString(),
                        "evenfall.app.Replay",
                        rig.toString(),
                        trace.toString())
                .redirectOutput(out.toFile())
                .redirectError(err.toFile())
                .start();
        assertThat(process.waitFor()).as(Files.readString(err)).isZero();
        return new Replayed(Files.readAllLines(out, StandardCharsets.UTF_8), digest(Files.readString(err)));
    }

    private static String digest(String text) {
        Matcher found = DIGEST.matcher(text);
        assertThat(found.find()).as(text).isTrue();
        return found.group();
    }

    private static String last(String text) {
        List<String> lines = text.lines().filter(line -> !line.isBlank()).toList();
        return lines.get(lines.size() - 1);
    }

    private static List<String> names(JsonNode node) {
        List<String> names = new ArrayList<>();
        node.fieldNames().forEachRemaining(names::add);
        return names;
    }

    @Test
    void nothingIsLeftBehind() throws IOException {
        try (Stream<Path> left = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
            assertThat(left.filter(path -> path.getFileName()
                            .toString()
                            .startsWith(
                                    "evenfall-run-" + ProcessHandle.current().pid())))
                    .isEmpty();
        }
        assertThat(ProcessHandle.current().children()).isEmpty();
    }
}
