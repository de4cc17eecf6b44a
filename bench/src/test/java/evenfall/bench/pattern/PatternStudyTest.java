package evenfall.bench.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import evenfall.bench.report.Paint;
import evenfall.outlet.OutletCatalogue;
import evenfall.outlet.OutletType;
import evenfall.pattern.HeightWindow;
import evenfall.pattern.StaticPattern;
import evenfall.quantity.Units;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PatternStudyTest {
    private static final double SPACING_M = 0.508;
    private static final double ROW_M = 0.1905;
    private static final double PRESSURE_PA = 200_000;
    private static final double SG = 1.28;

    private static PatternStudy study(String outlet, int count, double phase, Double... heightsM) {
        OutletType type = OutletCatalogue.builtIn(outlet).fitted(SPACING_M);
        return PatternStudy.of(
                type, new StaticPattern.Layout(count, SPACING_M, ROW_M, phase), PRESSURE_PA, SG, List.of(heightsM));
    }

    /**
     * Source of the figures: the project's numerical prototype in another language, the same model coded independently; 72
     * outlets at 0.508 m, rows at 0.1905 m, SG 1.28, 200 kPa; mean over eight row phases, given to 0.5 points.
     */
    @ParameterizedTest(name = "at {0} m")
    @CsvSource({"0.05, 86, 85, 85, 15, 6", "0.25, 55, 34, 37, 5, 6", "0.50, 3, 3, 5, 3, 6", "0.75, 32, 16, 3, 6, 6"})
    void rowCvInTheJsonIsThatOfTheIndependentPrototype(
            double heightM, double three, double five, double six, double seven, double bar) {
        double[] expected = {three, five, six, seven, bar};
        for (int i = 0; i < expected.length; i++) {
            String outlet = OutletCatalogue.ids().get(i);
            double sum = 0;
            for (int phase = 0; phase < 8; phase++) {
                JsonNode json = PatternJson.of(study(outlet, 72, phase / 8.0, heightM));
                sum += json.at("/cases/0/row_cv").asDouble();
            }
            assertThat(100 * sum / 8).as(outlet).isCloseTo(expected[i], within(0.5));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"three-stream", "five-stream", "six-stream", "seven-stream", "streamer-bar"})
    void mirroredRowsGetTheMirrorImage(String outlet) {
        long seed = 20_261_125;
        Random random = new Random(seed);
        for (int i = 0; i < 20; i++) {
            double heightM = random.nextDouble() * 1.2;
            double phase = random.nextDouble();
            List<StaticPattern.Row> rows =
                    study(outlet, 40, phase, heightM).cases().get(0).rows();
            List<StaticPattern.Row> mirrored =
                    study(outlet, 40, 1 - phase, heightM).cases().get(0).rows();
            assertThat(mirrored).as("seed %d, case %d", seed, i).hasSameSizeAs(rows);
            for (int j = 0; j < rows.size(); j++) {
                StaticPattern.Row other = mirrored.get(rows.size() - 1 - j);
                assertThat(other.atM())
                        .as("seed %d, case %d, row %d", seed, i, j)
                        .isCloseTo(-rows.get(j).atM(), within(1e-9));
                assertThat(other.share())
                        .as("seed %d, case %d, row %d", seed, i, j)
                        .isCloseTo(rows.get(j).share(), within(1e-9));
            }
        }
    }

    @Test
    void sharesOfLinesSumToOneAndSharesOfRowsToTheirNumber() {
        for (String outlet : OutletCatalogue.ids()) {
            JsonNode one = PatternJson.of(study(outlet, 72, 0.5, 0.37)).at("/cases/0");
            double lines = 0;
            for (JsonNode line : one.get("lines")) {
                lines += line.get("share").asDouble();
            }
            double rows = 0;
            for (JsonNode row : one.get("rows")) {
                rows += row.get("share").asDouble();
            }
            assertThat(lines).as(outlet).isCloseTo(1, within(1e-5));
            assertThat(rows).as(outlet).isCloseTo(one.get("rows").size(), within(1e-3));
        }
    }

    @Test
    void aBarFeedsItsRowsAlikeFromAnyHeight() {
        List<StaticPattern> cases =
                study("streamer-bar", 72, 0.3, 0.05, 0.4, 1.1).cases();
        assertThat(cases.get(1).rows()).isEqualTo(cases.get(0).rows());
        assertThat(cases.get(2).rows()).isEqualTo(cases.get(0).rows());
    }

    @Test
    void aMeasureThatIsNotDefinedIsNullInJsonAndADashForPeople() {
        PatternStudy study = study("five-stream", 1, 0.5, 0.5);
        JsonNode one = PatternJson.of(study).at("/cases/0");
        for (String measure : List.of(
                "row_cv",
                "least_row",
                "most_row",
                "below_80_share",
                "above_120_share",
                "widest_gap_m",
                "doubled_share")) {
            assertThat(one.has(measure)).as(measure).isTrue();
            assertThat(one.get(measure).isNull()).as(measure).isTrue();
        }
        assertThat(one.get("rows")).isEmpty();
        assertThat(one.get("why").asText()).startsWith("the boom is too short");
        assertThat(PatternJson.of(study("five-stream", 72, 0.5, 0.5))
                        .at("/cases/0")
                        .has("why"))
                .as("a reason without a null")
                .isFalse();
        assertThat(String.join("\n", new PatternText(Units.METRIC, Paint.OFF, 80).lines(study)))
                .contains("SG 1.28: 1 outlet, rows", "too short to measure")
                .doesNotContain("NaN");
    }

    @Test
    void jsonHasExactlyTheKeysOfTheContract() {
        JsonNode json = PatternJson.of(study("six-stream", 72, 0.5, 0.5));
        assertThat(names(json)).containsExactly("outlet", "outside_window", "cases");
        assertThat(names(json.at("/cases/0")))
                .containsExactly(
                        "height_m",
                        "row_cv",
                        "least_row",
                        "most_row",
                        "below_80_share",
                        "above_120_share",
                        "widest_gap_m",
                        "doubled_share",
                        "lines",
                        "rows");
        assertThat(names(json.at("/cases/0/lines/0"))).containsExactly("right_m", "back_m", "share");
        assertThat(names(json.at("/cases/0/rows/0"))).containsExactly("at_m", "share");
    }

    /** The window of the built-in five-stream type is 100 to 400 kPa, by its file; its ends belong to it. */
    @ParameterizedTest
    @CsvSource({"99.9, true", "100, false", "400, false", "400.1, true"})
    void aPressureOutsideTheWindowIsMarked(double pressureKPa, boolean outside) {
        OutletType type = OutletCatalogue.builtIn("five-stream").fitted(SPACING_M);
        PatternStudy study = PatternStudy.of(
                type, new StaticPattern.Layout(72, SPACING_M, ROW_M, 0.5), 1000 * pressureKPa, SG, List.of(0.5));
        assertThat(PatternJson.of(study).get("outside_window").asBoolean()).isEqualTo(outside);
    }

    @Test
    void heightWindowsThatHoldAreToldOnceAndABarHoldsAtAny() {
        assertThat(study("five-stream", 72, 0.5, 0.5, 0.55, 0.1).windows())
                .singleElement()
                .satisfies(window -> {
                    assertThat(window.lowM()).isBetween(0.3, 0.45);
                    assertThat(window.highM()).isBetween(0.65, 0.8);
                });
        assertThat(study("streamer-bar", 72, 0.5, 0.1).windows())
                .singleElement()
                .matches(HeightWindow::isOpen);
    }

    @Test
    void rowsTooLittleOrTooMuchFedAreMarkedWithoutColour() {
        String text = String.join(
                "\n", new PatternText(Units.METRIC, Paint.OFF, 80).lines(study("three-stream", 72, 0.5, 0.25)));
        assertThat(text)
                .contains("uneven")
                .contains("++")
                .contains("--")
                .contains("▲")
                .doesNotContain("\u001b");
    }

    private static List<String> names(JsonNode node) {
        List<String> names = new ArrayList<>();
        node.fieldNames().forEachRemaining(names::add);
        return names;
    }
}
