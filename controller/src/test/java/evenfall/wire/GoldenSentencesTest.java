package evenfall.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class GoldenSentencesTest {

    /** The table prints ten decimals of a degree: a hundredth of a millimetre. */
    private static final double TABLE_DECIMALS = 1e-9;

    @TestFactory
    Stream<DynamicTest> everyRowDecodesAsItSays() {
        return GoldenTable.rows().stream()
                .map(row -> DynamicTest.dynamicTest(
                        "line " + row.line() + " " + row.kind() + " " + row.sentence(), () -> check(row)));
    }

    @Test
    void everyKindHasARowThatHoldsBothWays() {
        assertThat(GoldenTable.rows().stream().map(GoldenTable.Row::kind).collect(Collectors.toSet()))
                .contains(
                        "rmc",
                        "vtg",
                        "gga",
                        "flow",
                        "wheel",
                        "heights",
                        "pressure",
                        "sections",
                        "air",
                        "level",
                        "hub",
                        "acknowledged",
                        "ignored",
                        "reject:checksum",
                        "reject:malformed",
                        "reject:too_long");
    }

    /** All other sentences are written by others; this one by the box itself. */
    @Test
    void theBoxWritesItsOwnSentenceAsTheTableHasIt() {
        List<GoldenTable.Row> rows = GoldenTable.rows().stream()
                .filter(row -> row.kind().equals("acknowledged"))
                .toList();
        assertThat(rows).hasSizeGreaterThanOrEqualTo(2);
        for (GoldenTable.Row row : rows) {
            byte[] written = Acknowledgement.sentence(
                    row.fields().getOrDefault("kind", ""), row.fields().getOrDefault("place", ""));
            assertThat(new String(written, StandardCharsets.US_ASCII)).isEqualTo(row.sentence() + "\r\n");
        }
    }

    @Test
    void whatIsNoWordIsNeverWritten() {
        for (String wrong : List.of("", "Wing", "a,b", "a*b", "a b", "ä", "a\r\n", "x".repeat(70))) {
            assertThatThrownBy(() -> Acknowledgement.sentence("wing-low", wrong))
                    .as(wrong)
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void everyExampleOfTheDocumentStandsInTheTable() throws IOException {
        String document = Files.readString(Path.of("docs", "wire.md"));
        List<String> examples = Pattern.compile("\\$[A-Z]{5},[^*`\\n]*\\*[0-9A-F]{2}")
                .matcher(document)
                .results()
                .map(MatchResult::group)
                .toList();
        assertThat(examples).hasSizeGreaterThanOrEqualTo(10);
        assertThat(GoldenTable.rows().stream().map(GoldenTable.Row::sentence)).containsAll(examples);
    }

    private static void check(GoldenTable.Row row) {
        SeenSentences seen = new SeenSentences();
        SentenceStream stream = new SentenceStream(seen);
        byte[] bytes = (row.sentence() + "\r\n").getBytes(StandardCharsets.US_ASCII);
        stream.accept(bytes, 0, bytes.length);

        assertThat(stream.counts()).isEqualTo(expectedCounts(row));
        if (!row.isDecoded()) {
            assertThat(seen.all).isEmpty();
            return;
        }
        assertThat(seen.only().kind()).isEqualTo(row.decodedKind());
        SortedMap<String, String> expected = new TreeMap<>(row.fields());
        expected.remove("geoidM"); // for encoders; the decoder does not read it
        assertThat(seen.only().fields().keySet()).isEqualTo(expected.keySet());
        seen.only().fields().forEach((key, value) -> {
            if (value instanceof Double number) {
                assertThat(number).as(key).isCloseTo(Double.parseDouble(expected.get(key)), within(TABLE_DECIMALS));
            } else {
                assertThat(value.toString()).as(key).isEqualTo(expected.get(key));
            }
        });
    }

    private static WireCounts expectedCounts(GoldenTable.Row row) {
        return switch (row.kind()) {
            case "ignored" -> new WireCounts(1, 0, 1, 0, 0, 0, 0, 0);
            case "reject:checksum" -> new WireCounts(1, 0, 0, 1, 0, 0, 0, 0);
            case "reject:malformed" -> new WireCounts(1, 0, 0, 0, 1, 0, 0, 0);
            case "reject:too_long" -> new WireCounts(1, 0, 0, 0, 0, 1, 0, 0);
            default -> new WireCounts(1, 1, 0, 0, 0, 0, 0, 0);
        };
    }
}
