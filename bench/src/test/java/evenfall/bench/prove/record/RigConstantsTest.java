package evenfall.bench.prove.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenfall.bench.prove.guide.Constant;
import evenfall.bench.prove.measure.Component;
import evenfall.bench.prove.measure.Estimate;
import evenfall.config.ConfigException;
import evenfall.rig.RigFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RigConstantsTest {
    private static final Path EXAMPLE = Path.of("../controller/docs/example-rig.yaml");

    @TempDir
    Path folder;

    private static Constant constant(@Nullable String place, String key, double value) {
        return new Constant(place, "sensors.speed", "wheel", key, Estimate.of(value, Component.repeats("x", 0.2, 1e9)));
    }

    private static Constant k(double value) {
        return constant("sensors.flow.pulses_per_L", "pulses_per_L", value);
    }

    @Test
    void onlyTheNumberChangesAndARemarkKeepsTheOldOne() throws Exception {
        Path rig = Files.copy(EXAMPLE, folder.resolve("rig.yaml"));
        Files.setPosixFilePermissions(rig, PosixFilePermissions.fromString("rw-r-----"));
        List<String> before = Files.readAllLines(rig);
        RigConstants.write(
                rig,
                List.of(k(148.86), constant("sensors.heights.at[3].above_outlet_m", "above", 0.131)),
                "2026-11-25",
                "flow");
        List<String> after = Files.readAllLines(rig);
        assertThat(after).hasSize(before.size() + 2);
        assertThat(RigFile.read(rig).sensors().flow().orElseThrow().pulsesPerM3())
                .isEqualTo(148_860);
        assertThat(after)
                .contains(
                        "  # 2026-11-25 prove flow: pulses_per_L was 150, found 148.86 +- 0.40 (95 %)",
                        "  flow: {port: hub, pulses_per_L: 148.86}");
        // Every other line, with its remarks and blanks, is there still and in its order.
        List<String> rest = new java.util.ArrayList<>(after);
        rest.removeIf(line -> !before.contains(line));
        List<String> kept = new java.util.ArrayList<>(before);
        kept.removeIf(line -> line.contains("pulses_per_L: 150") || line.contains("name: centre"));
        assertThat(rest).isEqualTo(kept);
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(rig)))
                .isEqualTo("rw-r-----");
        try (var files = Files.list(folder)) {
            assertThat(files).hasSize(1);
        }
    }

    @Test
    void aKeyThatWasNotGivenIsPutIn() throws ConfigException {
        String flow = "sensors:\n  heights:\n    port: hub\n    at:\n      - {name: a, right_m: 0.0}   # middle\n";
        assertThat(RigConstants.apply(
                        "x",
                        flow,
                        List.of(constant("sensors.heights.at[1].above_outlet_m", "above", 1.25)),
                        "d",
                        "height"))
                .isEqualTo("sensors:\n  heights:\n    port: hub\n    at:\n"
                        + "      # d prove height: above_outlet_m was not given, found 1.25 +- 0.40 (95 %)\n"
                        + "      - {name: a, right_m: 0.0, above_outlet_m: 1.25}   # middle\n");
        String block = "sensors:\r\n  heights:\r\n    at:\r\n      - name: a\r\n        right_m: 0\r\n";
        assertThat(RigConstants.apply(
                        "x",
                        block,
                        List.of(constant("sensors.heights.at[1].above_outlet_m", "above", 1.25)),
                        "d",
                        "height"))
                .isEqualTo("sensors:\r\n  heights:\r\n    at:\r\n"
                        + "      # d prove height: above_outlet_m was not given, found 1.25 +- 0.40 (95 %)\r\n"
                        + "      - above_outlet_m: 1.25\r\n        name: a\r\n        right_m: 0\r\n");
    }

    @Test
    void lettersBeyondAsciiBeforeTheNumberDoNotShiftIt() throws ConfigException {
        String text = "title: Größe 🚜 ü\nsensors:\n  flow: {port: hub, pulses_per_L: 150} # für Wasser\n";
        assertThat(RigConstants.apply("x", text, List.of(k(151)), "d", "flow"))
                .startsWith("title: Größe 🚜 ü\nsensors:\n  # d prove flow")
                .endsWith("\n  flow: {port: hub, pulses_per_L: 151.00} # für Wasser\n");
    }

    @Test
    void aConstantWithoutAPlaceBecomesARemark() throws ConfigException {
        String text = "sensors:\n  speed: {port: gnss}\n";
        assertThat(RigConstants.apply("x", text, List.of(constant(null, "pulses_per_m", 24.25)), "d", "speed"))
                .isEqualTo(
                        "sensors:\n  # d prove speed: wheel pulses_per_m 24.25 +- 0.40 (95 %); this rig file names no such sensor\n"
                                + "  speed: {port: gnss}\n");
    }

    @Test
    void aSecondProofKeepsTheRemarkOfTheFirst() throws ConfigException {
        String once = RigConstants.apply(
                "x", "sensors:\n  flow: {pulses_per_L: 150}\n", List.of(k(148)), "2026-04-01", "flow");
        String twice = RigConstants.apply("x", once, List.of(k(147)), "2026-11-25", "flow");
        assertThat(twice.lines())
                .containsExactly(
                        "sensors:",
                        "  # 2026-04-01 prove flow: pulses_per_L was 150, found 148.00 +- 0.40 (95 %)",
                        "  # 2026-11-25 prove flow: pulses_per_L was 148.00, found 147.00 +- 0.40 (95 %)",
                        "  flow: {pulses_per_L: 147.00}");
    }

    @Test
    void whatCannotBeWrittenLeavesTheFileAsItWas() throws IOException {
        String example = Files.readString(EXAMPLE);
        String aliased =
                example.replace("rate_Lpha: 150", "rate_Lpha: &k 150").replace("pulses_per_L: 150", "pulses_per_L: *k");
        String without = example.replaceAll("(?m)^  flow:.*\\n", "");
        for (String text : List.of(aliased, without, "name: x\n")) {
            Path rig = Files.writeString(folder.resolve("rig.yaml"), text);
            assertThatThrownBy(() -> RigConstants.write(rig, List.of(k(148)), "d", "flow"))
                    .isInstanceOf(ConfigException.class)
                    .hasMessageContaining("rig.yaml")
                    .hasMessageContaining("allowed: ");
            assertThat(Files.readString(rig)).isEqualTo(text);
        }
    }

    @Test
    void aLinkStaysALink() throws Exception {
        Path rig = Files.copy(EXAMPLE, folder.resolve("real.yaml"));
        Path link = Files.createSymbolicLink(folder.resolve("rig.yaml"), rig);
        RigConstants.write(link, List.of(k(148)), "d", "flow");
        assertThat(Files.isSymbolicLink(link)).isTrue();
        assertThat(Files.readString(rig)).contains("pulses_per_L: 148.00");
    }
}
