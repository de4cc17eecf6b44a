package evenfall.bench.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ChooseCommandTest {
    @TempDir
    Path folder;

    private static String said(String... args) {
        Captured captured = Captured.run(args);
        assertThat(captured.err()).isEmpty();
        assertThat(captured.status()).isZero();
        return captured.out();
    }

    private static JsonNode json(String... args) throws JsonProcessingException {
        List<String> all = new ArrayList<>(List.of("choose", "--json"));
        all.addAll(List.of(args));
        return new ObjectMapper().readTree(said(all.toArray(new String[0])));
    }

    @ParameterizedTest
    @ValueSource(strings = {"metric", "us"})
    void theTypicalCaseFitsAHundredColumns(String units) {
        String out = said("choose", "--units", units);
        assertThat(out.lines()).allMatch(line -> line.length() <= 100);
        assertThat(out.lines())
                .noneMatch(line -> line.strip().matches("(%|m |in |kPa|psi|km/h|mph|L/|US g|gal/ac|gpm).*"));
        assertThat(out).contains(units.equals("us") ? "sizes US gpm" : "sizes L/min");
        assertThat(out).contains("three-stream", "five-stream", "six-stream", "seven-stream", "streamer-bar");
        assertThat(out.replaceAll("\\s+", " "))
                .contains("neither leaf burn nor yield", "cost unknown: no price file was given");
    }

    /** The same case said in either system; the numbers are each other's by the exact definitions of the units. */
    @Test
    void metricAndUsOptionsMeanTheSame() throws JsonProcessingException {
        JsonNode us = json(
                "--rate-galpac",
                "20-40",
                "--speed-mph",
                "5-10",
                "--pressure-psi",
                "20-50",
                "--spacing-in",
                "20",
                "--row-in",
                "7.5",
                "--height-in",
                "20",
                "--height-wander-in",
                "4",
                "--width-ft",
                "120",
                "--air-F",
                "50");
        JsonNode metric = json(
                "--rate-Lpha",
                "187.079142-374.158285",
                "--speed-kmh",
                "8.04672-16.09344",
                "--pressure-kPa",
                "137.895146-344.737865",
                "--spacing-m",
                "0.508",
                "--row-m",
                "0.1905",
                "--height-m",
                "0.508",
                "--height-wander-m",
                "0.1016",
                "--width-m",
                "36.576",
                "--air-C",
                "10");
        assertThat(us.get("job").get("outlets").asInt()).isEqualTo(72);
        assertThat(us.get("verdict")).isEqualTo(metric.get("verdict"));
        for (String key :
                List.of("rate_low_Lpha", "speed_high_mps", "pressure_low_kPa", "height_m", "height_sd_m", "air_C")) {
            assertThat(us.get("job").get(key).asDouble())
                    .as(key)
                    .isCloseTo(metric.get("job").get(key).asDouble(), within(1e-3));
        }
    }

    @Test
    void jsonSaysUnknownAsNullWithAReason() throws JsonProcessingException {
        JsonNode root = json("--pressure-kPa", "200-230", "--rate-Lpha", "100-300");
        for (JsonNode outlet : root.get("outlets")) {
            assertThat(outlet.get("sets").isNull()).isTrue();
            assertThat(outlet.get("score").isNull()).isTrue();
            assertThat(outlet.get("shortfall").asText()).isNotEmpty();
            assertThat(outlet.get("cost").get("amount").isNull()).isTrue();
            assertThat(outlet.get("cost").get("unknown_why").asText()).isNotEmpty();
            assertThat(outlet.get("corners").get(0).get("pressure_kPa").isNull())
                    .isTrue();
        }
        assertThat(root.get("leaf_contact").get("weather_factor").isNull()).isTrue();
        assertThat(root.get("leaf_contact").get("caveat").asText()).contains("neither leaf burn nor yield");
    }

    @Test
    void theExamplePricesCanBeReadAndSayThatTheyAreInvented() {
        String out = said(
                "choose", "--prices", Path.of("docs/example-prices.yaml").toString(), "--weigh", "cost=2,tolerance=1");
        assertThat(out).contains("EUR", "invented").doesNotContain("cost unknown");
    }

    @ParameterizedTest
    @ValueSource(strings = {"metric", "us"})
    void thePageHasBothChartsAndNeedsNothingElse(String units) throws IOException {
        Path file = folder.resolve("choice.html");
        said("choose", "--units", units, "--html", file.toString());
        String html = Files.readString(file);
        assertThat(html.split("<svg", -1)).hasSize(4);
        assertThat(html)
                .contains(units.equals("us") ? "height of the outlets over the ground, in" : "over the ground, m");
        assertThat(html).contains("neither leaf burn nor yield", "common practice, no source", "Relieve the pressure");
        assertThat(html).doesNotContain("src=", "<script");
    }

    @Test
    void twoRunsGiveTheSameBytes() {
        assertThat(said("choose", "--json")).isEqualTo(said("choose", "--json"));
    }
}
