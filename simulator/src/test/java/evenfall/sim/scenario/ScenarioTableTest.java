package evenfall.sim.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.config.ConfigException;
import evenfall.quantity.FixedDecimals;
import evenfall.sim.fault.Part;
import evenfall.sim.fault.ScriptedFault;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The table of scenarios for people says what the files say. */
class ScenarioTableTest {
    private static final Pattern CODE = Pattern.compile("`([^`]+)`");

    /** The public list of alert kinds. */
    private static final List<String> ALERTS = List.of(
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

    private record Row(String name, String length, String ground, String machine, String wrong, String noticed) {}

    private static List<Row> table() throws IOException {
        List<Row> rows = new ArrayList<>();
        for (String line : Files.readAllLines(Path.of("docs/scenarios.md"))) {
            if (line.startsWith("| `")) {
                String[] cells = line.split("\\s*\\|\\s*");
                assertThat(cells).as(line).hasSize(7);
                rows.add(new Row(words(cells[1]).get(0), cells[2], cells[3], cells[4], cells[5], cells[6]));
            }
        }
        return rows;
    }

    private static List<String> words(String cell) {
        List<String> words = new ArrayList<>();
        Matcher matcher = CODE.matcher(cell);
        while (matcher.find()) {
            words.add(matcher.group(1));
        }
        return words;
    }

    @Test
    void theTableListsTheScenariosInTheirOrder() throws IOException {
        assertThat(table().stream().map(Row::name)).containsExactlyElementsOf(Scenarios.names());
        assertThat(Scenarios.names()).hasSizeGreaterThanOrEqualTo(12).doesNotHaveDuplicates();
    }

    @Test
    void everyRowSaysWhatItsFileSays() throws IOException, ConfigException {
        for (Row row : table()) {
            Scenario scenario = Scenarios.find(row.name());
            WorldSpec world = scenario.world();
            String outlets = String.format(
                    Locale.ROOT,
                    "%d × %s m",
                    world.fitted().boom().outlets(),
                    FixedDecimals.text(world.fitted().boom().spacingM(), 3).replaceAll("0$", ""));
            Set<String> faults = new TreeSet<>();
            for (ScriptedFault fault : world.faults()) {
                faults.add(fault.fault().id());
            }
            assertThat(row.length()).as(row.name()).isEqualTo((int) scenario.seconds() + " s");
            assertThat(row.ground())
                    .as(row.name())
                    .startsWith(world.roughness().orElseThrow().name());
            assertThat(row.machine()).as(row.name()).contains(outlets);
            assertThat(words(row.machine()))
                    .as(row.name())
                    .containsExactly(world.fitted().outlet().id());
            assertThat(new TreeSet<>(words(row.wrong()))).as(row.name()).isEqualTo(faults);
            assertThat(ALERTS).as(row.name()).containsAll(words(row.noticed()));
            assertThat(row.noticed()).as(row.name()).isNotBlank();
        }
    }

    @Test
    void everyFamilyOfFaultsAndEveryOutletIsThere() throws ConfigException {
        Set<Part> parts = new TreeSet<>();
        Set<String> outlets = new TreeSet<>();
        Set<Double> spacings = new TreeSet<>();
        for (String name : Scenarios.names()) {
            WorldSpec world = Scenarios.find(name).world();
            world.faults().forEach(fault -> parts.add(fault.fault().part()));
            outlets.add(world.fitted().outlet().id());
            spacings.add(world.fitted().boom().spacingM());
        }
        assertThat(parts).containsExactlyInAnyOrder(Part.values());
        assertThat(outlets)
                .containsExactlyInAnyOrder("three-stream", "five-stream", "six-stream", "seven-stream", "streamer-bar");
        assertThat(spacings).as("metric and US").contains(0.5, 0.508);
    }

    @Test
    void everyFileSaysThatItIsInvented() throws IOException {
        for (String name : Scenarios.names()) {
            try (var in = Scenarios.class.getResourceAsStream(name + ".yaml")) {
                assertThat(new String(in.readAllBytes(), StandardCharsets.UTF_8))
                        .as(name)
                        .startsWith("# Invented: no field, farm or machine that exists.");
            }
        }
    }
}
