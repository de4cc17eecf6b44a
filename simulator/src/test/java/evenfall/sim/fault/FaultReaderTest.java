package evenfall.sim.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.config.ConfigException;
import evenfall.config.ConfigFile;
import evenfall.config.ConfigNode;
import evenfall.config.ConfigSchema;
import evenfall.sim.scenario.Scenario;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FaultReaderTest {
    private static final ConfigSchema SCHEMA = ConfigSchema.resource(FaultReaderTest.class, "faults-only.schema.json");

    private static List<ScriptedFault> read(String... lines) throws ConfigException {
        return read(Bench.PLACES, lines);
    }

    private static List<ScriptedFault> read(FaultPlaces places, String... lines) throws ConfigException {
        StringBuilder text = new StringBuilder("# a scenario\nfaults:\n");
        for (String line : lines) {
            text.append("  - {").append(line).append("}\n");
        }
        ConfigNode root = ConfigFile.parse("wet.yaml", text.toString(), SCHEMA).root();
        return FaultReader.read(root, places);
    }

    @Test
    void readsALineWithAllItsParts() throws ConfigException {
        ScriptedFault fault = read("fault: outlet-blocked, at_s: 20, for_s: 30, where: 17, how_much: 0.5")
                .get(0);
        assertThat(fault.fault().id()).isEqualTo("outlet-blocked");
        assertThat(fault.fromUs()).isEqualTo(20_000_000);
        assertThat(fault.untilUs()).isEqualTo(50_000_000);
        assertThat(fault.places()).containsExactly(16);
        assertThat(fault.howMuch()).isEqualTo(0.5);
    }

    @Test
    void takesTheUsualSizeAndStaysToTheEndWhereNothingIsSaid() throws ConfigException {
        ScriptedFault fault = read("fault: strainer-plugged, at_s: 0").get(0);
        assertThat(fault.howMuch()).isEqualTo(0.85);
        assertThat(fault.untilUs()).isEqualTo(Long.MAX_VALUE);
    }

    @ParameterizedTest
    @CsvSource({
        "outlet-worn, 9-12, 8 9 10 11",
        "outlet-worn, 72, 71",
        "section-stays-shut, 3, 2",
        "height-foam, right-mid, 3",
        "wing-stuck, right, 1",
        "tyre-soft, rear-left, 2",
        "cable-noise, gnss, 1",
    })
    void knowsThePlacesOfEachKind(String id, String where, String indices) throws ConfigException {
        ScriptedFault fault =
                read("fault: " + id + ", at_s: 1, where: " + where).get(0);
        assertThat(fault.places().stream().map(String::valueOf)).containsExactly(indices.split(" "));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "fault: outlet-bloked, at_s: 1, where: 3 | faults[1].fault: there is no fault outlet-bloked; the nearest is outlet-blocked; allowed: outlet-blocked, ",
                "fault: outlet-blocked, at_s: 1 | faults[1].where: is missing; allowed: 1 to 72, a stretch such as 9-12, or all",
                "fault: outlet-blocked, at_s: 1, where: 73 | faults[1].where: 73 is no place for outlet-blocked; allowed: 1 to 72",
                "fault: outlet-blocked, at_s: 1, where: 12-9 | 12-9 is no place",
                "fault: height-foam, at_s: 1, where: tip | tip is no place for height-foam; allowed: left-tip, left-mid, centre, right-mid, right-tip",
                "fault: strainer-plugged, at_s: 1, where: 3 | 3 cannot be used with strainer-plugged; allowed: nothing here",
                "fault: outlet-blocked, at_s: 1, where: 3, how_much: 1.5 | faults[1].how_much: 1.5 cannot be used with outlet-blocked; allowed: 0.05 to 1 of its hole, usually 1",
                "fault: pressure-offset, at_s: 1, how_much: 0 | allowed: -300 to 300 kPa too much, usually 60, not 0",
                "fault: wing-stuck, at_s: 1, where: left, how_much: 0.5 | 0.5 cannot be used with wing-stuck; allowed: nothing: it is there or not",
                "fault: hub-hung, at_s: -1 | faults[1].at_s: -1 cannot be used; allowed: a number, at least 0",
                "fault: hub-hung, at_s: 1, when: 3 | faults[1].when: is not known here; allowed: fault, at_s, for_s, where, how_much",
            })
    void saysWhatIsWrongWhereAndWhatIsAllowed(String line, String complaint) {
        assertThatThrownBy(() -> read(line))
                .isInstanceOf(ConfigException.class)
                .hasMessageStartingWith("wet.yaml:3: ")
                .hasMessageContaining(complaint.strip());
    }

    @Test
    void refusesAFaultThatIsAlreadyThere() {
        assertThatThrownBy(() -> read(
                        "fault: outlet-blocked, at_s: 1, for_s: 5, where: 9-12",
                        "fault: outlet-blocked, at_s: 5, where: 12"))
                .hasMessageContaining("wet.yaml:4: faults[2].fault: outlet-blocked is there already");
    }

    @Test
    void refusesAFaultOfAPartThatIsNotFitted() {
        FaultPlaces bare = new FaultPlaces(24, List.of("1"), List.of(), List.of("hub"), List.of());
        assertThatThrownBy(() -> read(bare, "fault: meter-stuck, at_s: 1")).hasMessageContaining("has no flow meter");
        assertThatThrownBy(() -> read(bare, "fault: height-foam, at_s: 1, where: tip"))
                .hasMessageContaining("has no height sensors");
    }

    @Test
    void aScenariosSchemaHoldsTheSameForm() throws IOException {
        JsonMapper mapper = JsonMapper.builder().build();
        JsonNode fragment = mapper.readTree(FaultReader.class.getResourceAsStream("fault.schema.json"));
        JsonNode scenario = mapper.readTree(Scenario.class.getResourceAsStream("scenario.schema.json"));
        assertThat(scenario.at("/$defs/fault")).isEqualTo(fragment.at("/$defs/fault"));
        JsonNode alone = mapper.readTree(FaultReaderTest.class.getResourceAsStream("faults-only.schema.json"));
        ((ObjectNode) alone.at("/$defs/fault")).get("description");
        assertThat(alone.at("/$defs/fault")).isEqualTo(fragment.at("/$defs/fault"));
    }

    /** The alert kinds of the contract. */
    @Test
    void everyFaultIsFullyDescribed() {
        List<String> kinds = List.of(
                "rate-high",
                "rate-low",
                "bands-gapped",
                "bands-doubled",
                "wing-low",
                "wing-high",
                "strike-ahead",
                "pressure-outside",
                "outlet-blocked",
                "outlet-open",
                "travel-without-flow",
                "flow-without-travel",
                "speed-lost",
                "sensor-silent",
                "sensor-implausible",
                "hub-restarted");
        TreeSet<String> ids = new TreeSet<>();
        for (Fault fault : Faults.all()) {
            assertThat(ids.add(fault.id())).as(fault.id()).isTrue();
            assertThat(fault.id()).matches("[a-z]+(-[a-z]+)*");
            assertThat(fault.notice()).as(fault.id()).matches("[A-Z].*\\.");
            assertThat(fault.seenBy()).as(fault.id()).isNotBlank();
            assertThat(kinds).as(fault.id()).containsAll(fault.alerts());
            Amount amount = fault.amount();
            assertThat(amount.usual()).as(fault.id()).isBetween(amount.least(), amount.most());
        }
        assertThat(ids).hasSizeGreaterThanOrEqualTo(25);
    }

    /** The table for people is made from the registry; this prints what is missing when it is not the same. */
    @Test
    void theTableForPeopleIsUpToDate() throws IOException {
        StringBuilder table = new StringBuilder();
        Part part = null;
        for (Fault fault : Faults.all()) {
            if (fault.part() != part) {
                part = fault.part();
                table.append("\n## ").append(part.words()).append("\n\n");
                table.append("| fault | where | how_much | what a crew notices | could be seen by | alerts |\n");
                table.append("|---|---|---|---|---|---|\n");
            }
            table.append("| `").append(fault.id()).append("` | ");
            table.append(fault.place() == PlaceKind.NOWHERE ? "" : fault.place().words());
            table.append(" | ").append(fault.amount().isGiven() ? fault.amount().words() : "");
            table.append(" | ").append(fault.notice()).append(" | ").append(fault.seenBy());
            table.append(" | ").append(String.join(", ", fault.alerts())).append(" |\n");
        }
        String text = Files.readString(Path.of("docs/faults.md"), StandardCharsets.UTF_8);
        assertThat(text.substring(text.indexOf("\n## "))).isEqualTo(table.toString());
    }
}
