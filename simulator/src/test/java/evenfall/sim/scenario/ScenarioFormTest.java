package evenfall.sim.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import evenfall.config.ConfigException;
import evenfall.sim.boom.BoomSpec;
import evenfall.sim.drive.SectionPlan;
import evenfall.sim.plumbing.PlumbingSpec;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What can be written in a scenario beyond the plainest, and what is said where it is wrong. */
class ScenarioFormTest {
    @TempDir
    Path folder;

    private Scenario level(String world) throws IOException, ConfigException {
        return edited("  air_C: 12\n", "  air_C: 12\n" + world);
    }

    private Scenario edited(String from, String to) throws IOException, ConfigException {
        Path file = folder.resolve("mine.yaml");
        String text = levelField();
        assertThat(text).contains(from);
        Files.writeString(file, text.replace(from, to));
        return Scenarios.find(file.toString());
    }

    private static String levelField() throws IOException {
        try (var in = Scenarios.class.getResourceAsStream("level-field.yaml")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** Every key that the schema knows, but those of the rig file. */
    private static void keys(JsonNode schema, Set<String> into) {
        JsonNode properties = schema.path("properties");
        properties.fieldNames().forEachRemaining(into::add);
        for (JsonNode child : schema) {
            if (child.isContainerNode()) {
                keys(child, into);
            }
        }
    }

    @Test
    void everyKeyIsDocumented() throws IOException {
        Set<String> keys = new TreeSet<>();
        try (var in = Scenario.class.getResourceAsStream("scenario.schema.json")) {
            keys(JsonMapper.builder().build().readTree(in), keys);
        }
        Set<String> documented = new TreeSet<>();
        Matcher matcher = Pattern.compile("`(\\w+)`").matcher(Files.readString(Path.of("docs/scenario.md")));
        while (matcher.find()) {
            documented.add(matcher.group(1));
        }
        assertThat(keys).hasSizeGreaterThan(120);
        assertThat(documented).containsAll(keys);
    }

    @Test
    void passesTurnsAndHeadlandsComeFromTheFile() throws IOException, ConfigException {
        WorldSpec world = edited(
                        "    start_mps: 5.5\n",
                        "    start_mps: 5.5\n    passes: {count: 2, length_m: 200, apart_m: 36, first_turn: left, turn_mps: 3}\n"
                                + "  headland_off: {late_off_m: 2, late_on_m: -1}\n")
                .world();
        assertThat(world.drive().path().poseAt(150).xM()).isEqualTo(150);
        double secondM = world.drive().path().passEdgesM().get(1);
        assertThat(world.drive().path().poseAt(secondM + 50).yM()).isCloseTo(-36, within(1e-6));
        assertThat(world.drive().path().poseAt(secondM + 50).xM()).isCloseTo(150, within(1e-6));
        assertThat(world.sections().switches())
                .contains(SectionPlan.Switch.atM(202, 0), SectionPlan.Switch.atM(secondM - 1, 0b111111));
        assertThat(world.drive().changes()).isNotEmpty();
    }

    @Test
    void aWayOfBendsAndSectionsByPlaceComeFromTheFile() throws IOException, ConfigException {
        WorldSpec world = edited(
                        "    start_mps: 5.5\n",
                        "    start_mps: 5.5\n    way: [{straight_m: 50}, {turn_deg: 90, radius_m: 20, run_in_m: 0}, {straight_m: 30}]\n"
                                + "  sections: [{at_m: 20, on: [1, 2]}, {at_s: 9, on: [6]}]\n")
                .world();
        // A quarter of a circle of 20 m to the right, then 10 m straight on.
        double arcM = 0.5 * Math.PI * 20;
        assertThat(world.drive().path().poseAt(50 + arcM + 10).xM()).isCloseTo(70, within(1e-9));
        assertThat(world.drive().path().poseAt(50 + arcM + 10).yM()).isCloseTo(30, within(1e-9));
        assertThat(world.sections().switches())
                .containsExactly(SectionPlan.Switch.atM(20, 0b11), SectionPlan.Switch.atS(9, 0b100000));
    }

    @Test
    void everyNumberOfTheMachineCanBeChanged() throws IOException, ConfigException {
        WorldSpec world = edited(
                        "    boom: wide-36\n",
                        "    boom: wide-36\n    boom_but: {half_width_m: 20, hinge_m: 3, roll_hz: 0.5, wing_taper: 0.4,"
                                + " sway: {yaw_hz: 0.6}, soil: {contact_hz: 0}}\n"
                                + "    chassis_but: {mass_kg: 9000, track_m: 2.25}\n"
                                + "    height_control: {delay_s: 0.5, sensors_m: [-15, 15]}\n")
                .world();
        BoomSpec usual = BoomSpec.wide36();
        assertThat(world.boom().halfWidthM()).isEqualTo(20);
        assertThat(world.boom().rollModeHz()).isEqualTo(0.5);
        assertThat(world.boom().bendingHz()).isEqualTo(usual.bendingHz());
        assertThat(world.boom().sway().yawHz()).isEqualTo(0.6);
        assertThat(world.boom().sway().bendingHz()).isEqualTo(usual.sway().bendingHz());
        assertThat(world.boom().soil().contactHz()).isZero();
        assertThat(world.boom().control().sensorRightM()).containsExactly(-15.0, 15.0);
        assertThat(world.boom().control().delayS()).isEqualTo(0.5);
        assertThat(world.chassis().massKg()).isEqualTo(9000);
        assertThat(world.chassis().trackM()).isEqualTo(2.25);
    }

    @Test
    void pumpSectionsAndSensorsCanBeChanged() throws IOException, ConfigException {
        WorldSpec world = level(
                        "  plumbing: {pump_Lpm: 300, section_open_s: 1, dribble_mL: 0, wear_pct: 4, controller_speed_pct: -3}\n"
                                + "  sensors: {heights: {kind: radar, offset_m: 0.02}, wheel: {pulses_per_m: 20}, flow: {least_Lpm: 6}}\n"
                                + "  fitted: {liquid: uan-32}\n")
                .world();
        PlumbingSpec.Lines lines = world.plumbing().lines();
        assertThat(lines.pumpM3ps()).isCloseTo(0.005, within(1e-12));
        assertThat(lines.openS()).isEqualTo(1);
        assertThat(lines.dribbleM3()).isZero();
        assertThat(lines.wear()).isCloseTo(0.04, within(1e-12));
        assertThat(lines.controllerSpeedFactor()).isCloseTo(0.97, within(1e-12));
        assertThat(world.sensors().radar().orElseThrow().offsetM()).isEqualTo(0.02);
        assertThat(world.sensors().wheelPulsesPerM()).hasValue(20);
        assertThat(world.sensors().flowLeastM3ps()).isCloseTo(1e-4, within(1e-12));
        assertThat(world.fitted().liquid().id()).isEqualTo("uan-32");
    }

    @Test
    void aSurveyLiesUnderTheField() throws IOException, ConfigException {
        Files.writeString(
                folder.resolve("hill.asc"),
                "ncols 3\nnrows 3\nxllcenter 0\nyllcenter 0\ncellsize 100\n0 5 10\n0 5 10\n0 5 10\n");
        WorldSpec world = edited(
                        "    roughness: B                # ISO 8608\n",
                        "    roughness: level\n    survey: {file: hill.asc, east_m: 50, north_m: 100, bearing_deg: 90}\n")
                .world();
        // A plane of 5 % to the east, driven to the east.
        assertThat(world.surveyed().orElseThrow().heightM(20, 0)).isCloseTo(1.0, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "    start_mps: 5.5 | passes: {count: 2, length_m: 50, turn_mps: 9} | turn_mps | not above start_mps",
                "    start_mps: 5.5 | passes: {count: 0, length_m: 50} | count | at least 1",
                "    start_mps: 5.5 | way: [{straight_m: 5, turn_deg: 3}] | way[1].straight_m | either straight_m or turn_deg",
                "    start_mps: 5.5 | speeds: [{speed_mps: 5}] | speed_mps | either at_s or at_m",
                "    boom: wide-36 | boom_but: {half_width_m: 3, hinge_m: 5} | boom_but | a boom that can exist",
                "    boom: wide-36 | boom_but: {rol_hz: 1} | rol_hz | roll_hz",
                "  air_C: 12 | headland_off: {} | headland_off | a drive with passes",
                "  air_C: 12 | sensors: {heights: {offset_m: 0.1}} | offset_m | kind: radar",
                "  air_C: 12 | sensors: {heights: {kind: radar, spike_pct: 1}} | spike_pct | kind: ultrasonic",
                "  air_C: 12 | fitted: {liquid: beer} | liquid | uan-28",
                "  air_C: 12 | faults: [{fault: outlet-bloked, at_s: 1, where: 3}] | fault | the nearest is outlet-blocked",
                "  air_C: 12 | faults: [{fault: wheel-slipping, at_s: 1}] | fault | faults of parts that are fitted",
                "  air_C: 12 | faults: [{fault: outlet-blocked, at_s: 1, where: 99}] | where | 1 to 72",
                "  air_C: 12 | sections: [{at_s: 5, on: [7]}] | on | 1 to 6",
                "  air_C: 12 | sections: [{at_s: 5, on: [1]}, {at_s: 3, on: []}] | at_s | switchings in order",
                "    roughness: B | survey: {file: gone.asc, east_m: 0, north_m: 0} | gone.asc | the path of a readable file",
            })
    void aMistakeIsOneLineWithPlaceAndWhatIsAllowed(String after, String add, String where, String allowed)
            throws IOException {
        String line = levelField()
                .lines()
                .filter(l -> l.strip().startsWith(after))
                .findFirst()
                .orElseThrow();
        String indent = " ".repeat(line.length() - line.stripLeading().length());
        String message = null;
        try {
            edited(line + "\n", line + "\n" + indent + add + "\n");
        } catch (ConfigException e) {
            message = e.getMessage();
        }
        assertThat(message)
                .isNotNull()
                .doesNotContain("\n")
                .contains(where)
                .contains(allowed)
                .contains("; allowed: ");
        int lineNumber =
                2 + (int) levelField().lines().takeWhile(l -> !l.equals(line)).count();
        assertThat(message)
                .satisfiesAnyOf(
                        m -> assertThat(m).startsWith(folder.resolve("mine.yaml") + ":" + lineNumber + ": "),
                        m -> assertThat(m).startsWith(folder.resolve("gone.asc").toString()));
    }
}
