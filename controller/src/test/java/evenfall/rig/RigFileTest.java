package evenfall.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import evenfall.config.ConfigException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RigFileTest {
    /** The documented example is the rig of these tests, so it cannot go stale. */
    private static final Path EXAMPLE = Path.of("docs", "example-rig.yaml");

    private static String example() throws IOException {
        return Files.readString(EXAMPLE);
    }

    private static String complaint(String text) {
        Throwable thrown = catchThrowable(() -> RigFile.parse("rig.yaml", text, Path.of(".")));
        assertThat(thrown).isInstanceOf(ConfigException.class);
        assertThat(thrown.getMessage()).doesNotContain("\n");
        return thrown.getMessage();
    }

    private static String with(String from, String to) throws IOException {
        String text = example();
        assertThat(text).contains(from);
        return text.replace(from, to);
    }

    @Test
    void theExampleIsReadIntoSiUnits() throws Exception {
        Rig rig = RigFile.read(EXAMPLE);

        assertThat(rig.name()).isEqualTo("example-36");
        assertThat(rig.boom().widthM()).isCloseTo(36.576, within(1e-9));
        assertThat(rig.boom().outletRightM(0)).isCloseTo(-18.034, within(1e-9));
        assertThat(rig.boom().outletRightM(71)).isCloseTo(18.034, within(1e-9));
        assertThat(rig.boom().sectionOf(12)).isEqualTo(1);
        assertThat(rig.target().rateM()).isCloseTo(150e-7, within(1e-15));
        assertThat(rig.outlet().ratedFlowM3ps()).isCloseTo(2.8e-3 / 60, within(1e-12));
        assertThat(rig.sensors().flow().orElseThrow().pulsesPerM3()).isCloseTo(150_000, within(1e-6));
        assertThat(rig.sensors().pressure().orElseThrow().highA()).isCloseTo(0.020, within(1e-12));
        assertThat(rig.sensors().heights()).hasSize(5);
        assertThat(rig.limits().rowCv()).isCloseTo(0.15, within(1e-12));
        assertThat(rig.ports()).extracting(Rig.Port::name).containsExactly("hub", "gnss");
        assertThat(rig.ledger())
                .isEqualTo(new Rig.Ledger(
                        2, Rig.FixGrade.DIFFERENTIAL, 5, 0, OptionalDouble.empty(), OptionalDouble.empty()));
    }

    @Test
    void theLedgerTakesTheFarmsOwnFactors() throws Exception {
        String text = with("# product_factor: 1.0 ", "product_factor: 1.4 ").replace("cell_m: 2 ", "cell_m: 4 ");
        Rig rig = RigFile.parse("rig.yaml", text, Path.of("."));

        assertThat(rig.ledger().cellM()).isEqualTo(4);
        assertThat(rig.ledger().productFactor()).hasValue(1.4);
        assertThat(rig.ledger().weatherFactor()).isEmpty();
    }

    /** A key that would exclude another stands in a remark of the example. */
    @Test
    void theExampleHasEveryKeyOfTheSchema() throws IOException {
        JsonNode schema = JsonMapper.builder().build().readTree(RigFile.class.getResourceAsStream("rig.schema.json"));
        JsonNode tree = YAMLMapper.builder().build().readTree(example());
        String remarks = example()
                .lines()
                .filter(line -> line.contains("#"))
                .map(line -> line.substring(line.indexOf('#')))
                .collect(Collectors.joining("\n"));
        List<String> missing = new ArrayList<>();
        int keys = missingKeys("", schema, tree, remarks, missing);
        assertThat(missing).isEmpty();
        assertThat(keys).as("keys of the schema").isGreaterThan(50);
    }

    /** Goes down the schema and the example side by side; returns how many keys the schema has here. */
    private static int missingKeys(
            String place, JsonNode schema, JsonNode example, String remarks, List<String> missing) {
        int keys = 0;
        for (Map.Entry<String, JsonNode> property : schema.path("properties").properties()) {
            String key = property.getKey();
            keys++;
            if (!example.has(key)
                    && !Pattern.compile("\\b" + key + ":").matcher(remarks).find()) {
                missing.add(place + key);
            }
            keys += missingKeys(place + key + ".", property.getValue(), example.path(key), remarks, missing);
        }
        if (schema.has("items")) {
            keys += missingKeys(place, schema.get("items"), example.path(0), remarks, missing);
        }
        return keys;
    }

    @Test
    void whatIsLeftOutHasDefaults() throws Exception {
        String text = example();
        int limits = text.indexOf("limits:");
        int ports = text.indexOf("ports:");
        Rig rig = RigFile.parse("rig.yaml", text.substring(0, limits) + text.substring(ports), Path.of("."));

        assertThat(rig.limits().rateError()).isEqualTo(0.10);
        assertThat(rig.limits().holdM()).isEqualTo(5);
        assertThat(rig.ledger()).as("it stands between them").isEqualTo(Rig.Ledger.USUAL);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            spacing_m: 0.508     | spacing_m: -0.5    | rig.yaml:6: boom.spacing_m: -0.5 cannot be used | above 0
            spacing_m: 0.508     | spacing_m: wide    | rig.yaml:6: boom.spacing_m: wide cannot be used | a number
            spacing_m: 0.508     | spacin_m: 0.508    | boom.spacin_m: is not known here                | spacing_m
            type: five-stream    | type: four-stream  | outlets.type: there is no outlet type four-stream | three-stream, five-stream
            liquid: uan-28       | liquid: uan-29     | product.liquid: there is no product uan-29      | water, uan-28
            overlap_from: differential | overlap_from: near | ledger.overlap_from: near cannot be used        | differential
            cell_m: 2            | cell_m: 0          | ledger.cell_m: 0 cannot be used                 | 0.5
            port: gnss           | port: gps          | sensors.speed.port: there is no port called gps | hub, gnss
            high_kPa: 1000       | high_kPa: -10      | sensors.pressure.high_kPa: is not above low_kPa | above the low point
            right_m: 17.0        | right_m: 27.0      | sensors.heights.at[5].right_m: lies outside     | from -18.288 to 18.288 m
            right_m: 17.0        | right_m: 3.0       | is not right of the sensor before it            | from left to right
            name: right-tip      | name: left-tip     | two height sensors called left-tip              | a name of its own
            12, 12, 12, 12, 12, 12 | 12, 12, 12       | boom.sections: hold 36 outlets together         | add up to outlets: 72
            hinge_m: 6.0         | hinge_m: 19.0      | boom.hinge_m: lies outside the boom, which is 36.576 m wide | less than half
            baud: 115200         | baud: 115201       | ports[1].baud: 115201 cannot be used            | one of 4800, 9600
            height_m: 0.50       | height_m: 1.40     | target.height_m: lies outside                   | between 0.150 and 1.200 m
            ceiling_m: 1.20      | ceiling_m: 0.10    | limits.ceiling_m: is not above clearance_m      | above the clearance
            name: example-36     | name: Example 36   | name: Example 36 cannot be used                 | lower-case words
            """)
    void aWrongValueIsNamedWithItsPlaceAndWhatIsAllowed(String from, String to, String says, String allows)
            throws IOException {
        assertThat(complaint(with(from, to)))
                .contains(says)
                .contains("allowed: ")
                .contains(allows);
    }

    @Test
    void aMissingGroupIsNamed() throws IOException {
        String text = example();
        String without = text.substring(0, text.indexOf("target:")) + text.substring(text.indexOf("sensors:"));

        assertThat(complaint(without))
                .contains("rig.yaml")
                .contains("target: is missing")
                .contains("rate_Lpha");
    }

    @Test
    void twoMistakesGiveOneLineThatCountsTheOther() throws IOException {
        String text = with("row_m: 0.1905", "row_m: 0").replace("baud: 115200", "baud: 5");

        assertThat(complaint(text)).contains("boom.row_m").contains("; this file has 2 more faults");
    }

    @Test
    void whatIsNoYamlIsSaidSoWithItsLine() {
        assertThat(complaint("name: x\nboom: [1, 2\nports: 3\n"))
                .contains("rig.yaml:")
                .contains("is not YAML");
        assertThat(complaint("just a sentence")).contains("holds no keys");
        assertThat(complaint("")).contains("holds no keys");
    }

    @Test
    void aKeyGivenTwiceIsNotTakenSilently() throws IOException {
        assertThat(complaint(with("  row_m: 0.1905", "  row_m: 0.1905\n  row_m: 0.2")))
                .contains("rig.yaml:8")
                .contains("row_m");
    }

    @Test
    void aFileThatIsNotThereIsNamed() {
        assertThat(catchThrowable(() -> RigFile.read(Path.of("no-such-rig.yaml"))))
                .isInstanceOf(ConfigException.class)
                .hasMessageContaining("no-such-rig.yaml: there is no such file");
    }

    @Test
    void anOutletFileBesideTheRigCanBeNamed() throws Exception {
        String text = with("type: five-stream ", "file: ../../../docs/no-outlet.yaml #");

        assertThat(complaint(text)).contains("no-outlet.yaml: there is no such file");
    }
}
