package evenfall.bench.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ProveCommandTest {
    private static final Path EXAMPLE = Path.of("../controller/docs/example-rig.yaml");

    private static final String FLOW = """
            prove: flow
            measured_by: scale
            accuracy: 0.02 kg
            step: 0.01 kg
            density: 0.9982 kg/L
            density_accuracy: 0.0005 kg/L
            liquid_temperature: 14 C
            runs:
              - {flow: working, empty: 1.20 kg, counted: 3000 in 60 s, full: 21.20 kg}
              - {flow: working, empty: 1.20 kg, counted: 2998 in 60 s, full: 21.18 kg}
              - {flow: working, empty: 1.20 kg, counted: 3001 in 60 s, full: 21.22 kg}
            """;

    @TempDir
    Path folder;

    private Path answers(String text) throws IOException {
        return Files.writeString(folder.resolve("answers.yaml"), text);
    }

    private Captured prove(String what, String text, String... more) throws IOException {
        String[] args = new String[more.length + 6];
        args[0] = "prove";
        args[1] = what;
        args[2] = "--answers";
        args[3] = answers(text).toString();
        args[4] = "--result";
        args[5] = folder.resolve("result.json").toString();
        System.arraycopy(more, 0, args, 6, more.length);
        return Captured.run(args);
    }

    @Test
    void aFileOfAnswersGivesAResultFileAndAChangedRigFile() throws IOException {
        Path rig = Files.copy(EXAMPLE, folder.resolve("rig.yaml"));
        Captured captured = prove("flow", FLOW, "--json", "--write-rig", rig.toString());
        assertThat(captured.status()).as(captured.err()).isZero();
        JsonNode printed = JsonMapper.builder().build().readTree(captured.out());
        JsonNode written = JsonMapper.builder()
                .build()
                .readTree(folder.resolve("result.json").toFile());
        assertThat(printed).isEqualTo(written);
        assertThat(printed.path("rig").asText()).isEqualTo("example-36");
        assertThat(printed.path("passed").asBoolean()).isTrue();
        assertThat(printed.path("simulated").asBoolean()).isFalse();
        assertThat(printed.path("at_utc").asText()).matches("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\dZ");
        assertThat(printed.path("raw"))
                .anyMatch(raw -> raw.path("key").asText().equals("runs[2].full")
                        && raw.path("given").asText().equals("21.18 kg"));
        double found = printed.path("result")
                .path("k_factor")
                .path("value_pulses_per_L")
                .asDouble();
        assertThat(found).isCloseTo(149.6, within(0.1));
        assertThat(Files.readString(rig))
                .contains("prove flow: pulses_per_L was 150, found 149.")
                .contains("# An example rig");
    }

    @Test
    void aLimitThatIsNotMetIsStatusOne() throws IOException {
        Captured captured = prove("flow", FLOW, "--limit", "k-uncertainty=0.01");
        assertThat(captured.status()).isEqualTo(1);
        assertThat(captured.out()).contains("FAIL  flow: 1 of 2 limits not met");
        assertThat(Files.readString(folder.resolve("result.json"))).contains("set by hand");
    }

    @Test
    void badAnswersAreOneLineWithFileLineAndKey() throws IOException {
        isOneLine(
                prove("flow", FLOW.replace("full: 21.18 kg", "full: 21.18")),
                "answers.yaml:10",
                "runs[2].full",
                "a number with its unit");
        isOneLine(
                prove("flow", FLOW.replace("full: 21.18 kg", "full: '21.18'")),
                "answers.yaml:10",
                "runs[2].full",
                "has no unit");
        isOneLine(prove("flow", FLOW.replace("full: 21.18 kg", "full: 0.8 kg")), "answers.yaml:10", "-0.4 kg", "tared");
        isOneLine(
                prove("flow", FLOW.replaceAll("(?m)^.*3001.*\\n", "")),
                "runs[3]",
                "working has 2 of 3 runs",
                "at least 3 runs");
        isOneLine(
                prove("flow", FLOW.replace("accuracy: 0.02 kg\n", "")), "answers.yaml", "accuracy", "is missing", "kg");
        isOneLine(prove("flow", FLOW.replace("step:", "stop:")), "answers.yaml:4", "stop", "not known");
        isOneLine(prove("flow", FLOW.replace("prove: flow", "prove: speed")), "answers.yaml:1", "prove", "flow");
        isOneLine(
                prove("flow", FLOW.replace("3001 in 60 s", "listen 5 s")),
                "answers.yaml:11",
                "no port is known",
                "--port");
        isOneLine(prove("flow", FLOW, "--limit", "k-linarity=3"), "k-linarity", "k-linearity");
        isOneLine(
                prove("flow", FLOW, "--write-rig", folder.resolve("gone.yaml").toString()), "--write-rig", "gone.yaml");
        isOneLine(Captured.run("prove", "height", "--ask"), "--ask", "--answers");
        isOneLine(Captured.run("prove"), "prove", "flow, height, speed, outlets, wiring");
        isOneLine(Captured.run("prove", "depth"), "depth", "flow, height");
        assertThat(folder.resolve("result.json")).doesNotExist();
    }

    private static void isOneLine(Captured captured, String... parts) {
        assertThat(captured.status()).as(captured.err()).isEqualTo(2);
        assertThat(captured.out()).isEmpty();
        assertThat(captured.err().lines()).hasSize(1);
        assertThat(captured.err()).contains(parts).contains("allowed: ");
    }

    @Test
    void whatWasRecordedCanBeAnsweredFromTheResultAgain() throws IOException {
        String recorded = FLOW.replace(
                "3001 in 60 s", "{pulses: 3001, metres: null, seconds: 60, hub_restarted: false, longest_gap_s: 0.1}");
        assertThat(prove("flow", recorded).status()).isZero();
        isOneLine(
                prove("flow", recorded.replace("hub_restarted: false", "hub_restarted: true")),
                "answers.yaml:11",
                "started anew");
    }

    @Test
    void limitsAreListedWithTheirSources() {
        Captured listed = Captured.run("prove", "outlets", "--limits");
        assertThat(listed.status()).isZero();
        assertThat(listed.out()).contains("outlet-nominal", "Ohio State University Extension", "9.2.2");
    }

    @Test
    void anOutletsFilePrintsWhatToReplaceInTheUnitsAskedFor() throws IOException {
        Captured captured = prove("outlets", """
                prove: outlets
                outlets: 4
                measured_by: jug
                accuracy: 1 fl oz
                step: 0.5 fl oz
                nominal: 0.40 gpm
                catch_time: 60 s
                catches: [51 fl oz, 51.5 fl oz, 62 fl oz, 50.5 fl oz]
                repeats: [51 fl oz, 51 fl oz, 51.5 fl oz]
                speed: 6 mph
                spacing: 20 in
                """, "--units", "us");
        assertThat(captured.status()).isEqualTo(1);
        assertThat(captured.out()).contains("Replace (worn, or the wrong size): 3.", "US gal/ac", "drive 204 ft");
    }
}
