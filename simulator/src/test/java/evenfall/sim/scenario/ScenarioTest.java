package evenfall.sim.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenfall.config.ConfigException;
import evenfall.outlet.OutletCatalogue;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScenarioTest {
    @TempDir
    Path folder;

    private static String text(String name) throws IOException {
        try (var in = Scenarios.class.getResourceAsStream(name + ".yaml")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private Scenario edited(String name, String from, String to) throws IOException, ConfigException {
        String text = text(name);
        assertThat(text).as("what the test changes must be there").contains(from);
        Path file = folder.resolve("mine.yaml");
        Files.writeString(file, text.replace(from, to));
        return Scenarios.find(file.toString());
    }

    private static int lineOf(String text, String part) {
        return 1
                + (int) text.substring(0, text.indexOf(part))
                        .chars()
                        .filter(c -> c == '\n')
                        .count();
    }

    @Test
    void everyBuiltInScenarioReadsAndSaysWhatItIs() throws ConfigException {
        assertThat(Scenarios.names()).startsWith("level-field", "terrace-crossing", "knolls-at-speed");
        for (String name : Scenarios.names()) {
            Scenario scenario = Scenarios.find(name);
            assertThat(scenario.name()).isEqualTo(name);
            assertThat(scenario.title()).isNotBlank();
            assertThat(scenario.notes()).isNotBlank();
            assertThat(scenario.world().fitted().outlet())
                    .isEqualTo(scenario.belief().outlet());
            assertThat(scenario.belief().name()).isNotBlank();
        }
        assertThat(Scenarios.find("terrace-crossing").seconds()).isEqualTo(45);
    }

    @Test
    void anUnknownScenarioIsAnsweredWithTheNames() {
        assertThatThrownBy(() -> Scenarios.find("terrace-crosing"))
                .isInstanceOf(ConfigException.class)
                .hasMessage("terrace-crosing: there is no such scenario; allowed: "
                        + String.join(", ", Scenarios.names()) + ", or the path of a scenario file");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "  start_mps: 5.5       | strat_mps: 5.5             | strat_mps   | is not known here",
                "seconds: 45            | seconds: -1                | seconds: -1 | -1 cannot be used",
                "roughness: C           | roughness: F               | roughness: F| one of level, A, B, C, D, E",
                "installed: as-believed | installed: maybe           | installed:  | as-believed, as-given",
                "ridge_m: 0.20          | ridge_m: -0.2              | ridge_m: -0.2 | at least 0",
                "spacing_m: 0.508       | spacing_m: -0.508          | spacing_m: -| above 0",
                "type: five-stream      | type: fifth-stream         | type: fifth | there is no outlet type fifth-stream",
                "sections: [12, 12,     | sections: [13, 12,         | sections: [13 | add up to outlets: 72",
                "hub: {port: hub, start | hub: {port: hubb, start    | port: hubb  | the rig has no port called hubb",
                "gnss: {port: gnss,     | gnss: {port: hub,          | gnss: {port: hub | is the hub's port too",
                "{at_m: 35, speed_mps   | {at_m: 35, at_s: 3, speed_mps | at_s: 3  | either at_s or at_m",
            })
    void aMistakeIsNamedWithFileLineAndWhatIsAllowed(String from, String to, String where, String says)
            throws IOException {
        String text = text("terrace-crossing").replace(from, to);
        String message = null;
        try {
            edited("terrace-crossing", from, to);
        } catch (ConfigException e) {
            message = e.getMessage();
        }
        assertThat(message).isNotNull().doesNotContain("\n").contains(says).contains("; allowed: ");
        assertThat(message).startsWith(folder.resolve("mine.yaml") + ":" + lineOf(text, where) + ": ");
    }

    @Test
    void asGivenWantsEverythingGiven() {
        assertThatThrownBy(() -> edited("level-field", "installed: as-believed", "installed: as-given"))
                .isInstanceOf(ConfigException.class)
                .hasMessageContaining("does not say outlet_type")
                .hasMessageContaining("or installed: as-believed");
    }

    @Test
    void whatIsFittedStaysInTheWorldAndNeverReachesTheRig() throws IOException, ConfigException {
        Scenario scenario = edited(
                "level-field",
                "installed: as-believed",
                "installed: as-believed\n  fitted: {pulses_per_L: 163.25, above_outlet_m: [0.1, 0.1, 0.17, 0.1, 0.1],"
                        + " density_kgpL: 1.29}");
        assertThat(scenario.world().fitted().pulsesPerM3().getAsDouble()).isCloseTo(163_250, within(1e-6));
        assertThat(scenario.world().fitted().heights().get(2).aboveOutletM()).isEqualTo(0.17);
        assertThat(scenario.world().fitted().specificGravity()).isCloseTo(1290 / 998.2, within(1e-12));
        assertThat(scenario.belief().sensors().flow().orElseThrow().pulsesPerM3())
                .isCloseTo(150_000, within(1e-6));
        String rig = scenario.rigYaml(Map.of(), "127.0.0.1", 1883, Optional.empty());
        assertThat(rig).doesNotContain("163.25").doesNotContain("0.17").doesNotContain("1.29");
    }

    @Test
    void theRigForTheControllerIsTheBeliefWithItsPortsAndBrokerReplaced() throws ConfigException {
        Scenario scenario = Scenarios.find("terrace-crossing");
        String text = scenario.rigYaml(
                Map.of("hub", "/tmp/a/hub", "gnss", "/tmp/a/gnss"), "localhost", 18830, Optional.empty());
        Rig rig = RigFile.parse("rig.yaml", text, folder);
        Rig belief = scenario.belief();
        assertThat(rig.ports())
                .containsExactly(
                        new Rig.Port("hub", "/tmp/a/hub", 115_200), new Rig.Port("gnss", "/tmp/a/gnss", 115_200));
        assertThat(rig.broker()).isEqualTo(new Rig.Broker("localhost", 18830));
        assertThat(rig.boom()).isEqualTo(belief.boom());
        assertThat(rig.outlet()).isEqualTo(belief.outlet());
        assertThat(rig.sensors()).isEqualTo(belief.sensors());
        assertThat(rig.limits()).isEqualTo(belief.limits());
        assertThat(rig.target()).isEqualTo(belief.target());
    }

    @Test
    void anotherOutletIsFittedAndBelievedAndKeepsItsMeteringSize() throws ConfigException {
        Scenario scenario = Scenarios.find("terrace-crossing").withOutlet("streamer-bar");
        assertThat(scenario.world().fitted().outlet().id()).isEqualTo("streamer-bar");
        assertThat(scenario.belief().outlet().ratedFlowM3ps()).isCloseTo(2.8e-3 / 60, within(1e-15));
        for (String text : new String[] {
            scenario.rigYaml(Map.of(), "h", 1, Optional.empty()),
            Scenarios.find("terrace-crossing").rigYaml(Map.of(), "h", 1, Optional.of("streamer-bar"))
        }) {
            Rig rig = RigFile.parse("rig.yaml", text, folder);
            assertThat(rig.outlet().id()).isEqualTo("streamer-bar");
            assertThat(rig.outlet().ratedFlowM3ps()).isCloseTo(2.8e-3 / 60, within(1e-12));
        }
        assertThatThrownBy(() -> scenario.withOutlet("sixth-stream"))
                .isInstanceOf(ConfigException.class)
                .hasMessageContaining("there is no outlet type sixth-stream")
                .hasMessageContaining(String.join(", ", OutletCatalogue.ids()));
    }

    @Test
    void aShortBoomUnderAWideRigIsRefused() {
        assertThatThrownBy(() -> edited("level-field", "boom: wide-36", "boom: wide-24"))
                .isInstanceOf(ConfigException.class)
                .hasMessageContaining("is too short");
    }

    @Test
    void everyFeatureOfTheGroundCanBeWritten() throws IOException, ConfigException {
        Scenario scenario = edited("level-field", "roughness: B                # ISO 8608", """
                roughness: B
                    features:
                      - terrace: {at_m: 10, skew_deg: 20, stretch: {from_m: -40, to_m: 5}}
                      - knoll: {at_m: 10, radius_m: 10, top_m: -0.4}
                      - dip: {at_m: 10, depth_m: 0.3, length_m: 8}
                      - rise: {at_m: 10, height_m: 0.3, length_m: 8}
                      - dead_furrow: {at_m: 10, skew_deg: 90, depth_m: 0.2, width_m: 0.6}
                      - washout: {at_m: 10, depth_m: 0.3, bottom_m: 0.4, bank_m: 0.3}
                      - headland_bank: {at_m: 100, height_m: 0.3, slope_m: 2}
                      - side_slope: {right_mpm: 0.06}
                      - ruts: {from_m: 0, to_m: 50, gauge_m: 3, width_m: 0.5, left_depth_m: 0.1, right_depth_m: 0}""");
        assertThat(scenario.world().features()).hasSize(9);
    }
}
