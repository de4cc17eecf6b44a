package evenfall.bench.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import evenfall.bench.received.ReportedAlert;
import evenfall.bench.report.Paint;
import evenfall.config.ConfigException;
import evenfall.quantity.Units;
import evenfall.trace.TraceEnd;
import evenfall.trace.TraceFormatException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReplayingTest {
    /** RMC and GGA as receivers print them; invented positions, checksums computed here. */
    private static final List<String> BODIES = List.of(
            "GPRMC,120000.00,V,,,,,,,010224,,,N",
            "GPRMC,120001.00,A,4700.0000,N,00800.0000,E,9.7192,63.0,010224,,,A",
            "GPGSV,1,1,00",
            "GPRMC,120002.00,A,4700.0000,N,00800.0000,E,,,010224,,,A",
            "GPRMC,120003.00,A,4700.0000,N,00800.0000,E,11.6631,63.0,010224,,,A");

    @TempDir
    Path folder;

    private final List<ReportedAlert> told = new ArrayList<>();

    private final Replaying.Watcher watcher = new Replaying.Watcher() {
        @Override
        public void alert(ReportedAlert alert) {
            told.add(alert);
        }

        @Override
        public void coreRestarted(double atS, String unexpected) {
            throw new AssertionError(unexpected);
        }
    };

    private static String sentence(String body) {
        int sum = 0;
        for (char c : body.toCharArray()) {
            sum ^= c;
        }
        return "$" + body + "*" + String.format("%02X", sum);
    }

    private ReplayResult replay(Path file) throws IOException, ConfigException {
        return Replaying.of(file, Replaying.receiverOnly(), Replaying.Pace.MAX, watcher);
    }

    private Path rawLog() throws IOException {
        StringBuilder text = new StringBuilder();
        BODIES.forEach(body -> text.append(sentence(body)).append("\r\n"));
        text.append("$GPRMC,120004.00,A*00\r\n").append("$GPGGA without end\r\n");
        return Files.writeString(folder.resolve("receiver.nmea"), text.toString());
    }

    @Test
    void fixesAreAcceptedRmcWithStatusAAndSpeedsAreOverThoseThatHaveOne() throws Exception {
        ReplayResult result = replay(rawLog());
        assertThat(result.raw()).isTrue();
        assertThat(result.wire().sentences()).isEqualTo(7);
        assertThat(result.wire().accepted()).isEqualTo(4);
        assertThat(result.wire().ignored()).isEqualTo(1);
        assertThat(result.wire().rejectedChecksum()).isEqualTo(1);
        assertThat(result.wire().rejectedMalformed()).isEqualTo(1);
        assertThat(result.gnss().fixes()).isEqualTo(3);
        assertThat(result.gnss().firstUtc()).hasToString("2024-02-01T12:00:01Z");
        assertThat(result.gnss().lastUtc()).hasToString("2024-02-01T12:00:03Z");
        // 9.7192 and 11.6631 knots are 5 and 6 m/s.
        assertThat(result.gnss().meanSpeedMps()).isCloseTo(5.5, within(1e-4));
        assertThat(result.gnss().maxSpeedMps()).isCloseTo(6, within(1e-4));
    }

    @Test
    void theLastLineCountsWithoutItsLineEndToo() throws Exception {
        String first = sentence(BODIES.get(1)) + "\r\n";
        Path whole = Files.writeString(folder.resolve("whole.nmea"), first + sentence(BODIES.get(4)));
        assertThat(replay(whole).wire().accepted()).isEqualTo(2);
        Path torn = Files.writeString(folder.resolve("torn.nmea"), first + "$GPRMC,120003.00,A,47");
        assertThat(replay(torn).wire().sentences()).isEqualTo(2);
        assertThat(replay(torn).wire().rejectedMalformed()).isEqualTo(1);
        Path trace = Files.writeString(folder.resolve("torn.txt"), "0 gnss " + first + "5 gnss $GPRMC,1200");
        assertThat(replay(trace).wire().sentences()).isEqualTo(2);
        assertThat(replay(trace).wire().rejectedMalformed()).isEqualTo(1);
    }

    @Test
    void jsonHasExactlyTheKeysOfTheContract() throws Exception {
        JsonNode json = ReplayJson.of(replay(rawLog()));
        assertThat(names(json)).containsExactly("wire", "gnss", "alerts", "digest");
        assertThat(names(json.get("wire"))).containsExactly("sentences", "accepted", "ignored", "rejected");
        assertThat(names(json.at("/wire/rejected"))).containsExactly("checksum", "malformed", "too_long");
        assertThat(names(json.get("gnss")))
                .containsExactly("fixes", "first_utc", "last_utc", "mean_speed_mps", "max_speed_mps");
        assertThat(json.get("digest").asText()).matches("[0-9a-f]{64}");
    }

    @Test
    void whatFixesDoNotCarryIsNullWithItsReason() throws Exception {
        String dateless = "GPRMC,120001.00,A,4700.0000,N,00800.0000,E,9.7192,63.0,,,,A";
        String speedless = BODIES.get(3);
        JsonNode first = gnss(dateless);
        assertThat(first.get("first_utc").isNull()).isTrue();
        assertThat(first.get("why").asText()).isEqualTo("no fix has a date and a time");
        JsonNode second = gnss(speedless);
        assertThat(second.get("max_speed_mps").isNull()).isTrue();
        assertThat(second.get("why").asText()).isEqualTo("no fix has a speed");
        assertThat(gnss(BODIES.get(1)).has("why")).as("a reason without a null").isFalse();
    }

    private JsonNode gnss(String body) throws IOException, ConfigException {
        Path file = Files.writeString(folder.resolve("one.nmea"), sentence(body) + "\r\n");
        return ReplayJson.of(replay(file)).get("gnss");
    }

    @Test
    void withoutAnyFixTimesAndSpeedsAreNull() throws Exception {
        Path file = Files.writeString(folder.resolve("none.nmea"), sentence(BODIES.get(0)) + "\r\n");
        JsonNode gnss = ReplayJson.of(replay(file)).get("gnss");
        assertThat(gnss.get("fixes").asInt()).isZero();
        for (String key : List.of("first_utc", "last_utc", "mean_speed_mps", "max_speed_mps")) {
            assertThat(gnss.get(key).isNull()).as(key).isTrue();
        }
        assertThat(gnss.get("why").asText()).isEqualTo("no fix");
        assertThat(String.join("\n", new ReplayText(Units.METRIC, Paint.OFF).lines(replay(file))))
                .contains("no fix");
    }

    @Test
    void aPackedTraceGivesTheSameDigestAsThePlainOne() throws Exception {
        StringBuilder text = new StringBuilder("# invented\n");
        for (int i = 0; i < BODIES.size(); i++) {
            text.append(i * 1_000_000L)
                    .append(" gnss ")
                    .append(sentence(BODIES.get(i)))
                    .append('\n');
        }
        text.append("9000000 - end\n");
        Path plain = Files.writeString(folder.resolve("trace.txt"), text.toString());
        Path packed = folder.resolve("trace.txt.gz");
        try (GZIPOutputStream out = new GZIPOutputStream(Files.newOutputStream(packed))) {
            out.write(text.toString().getBytes(StandardCharsets.UTF_8));
        }
        ReplayResult one = replay(plain);
        ReplayResult other = replay(packed);
        assertThat(one.digest()).isEqualTo(other.digest());
        assertThat(one.raw()).isFalse();
        assertThat(one.lengthS()).isEqualTo(9);
        assertThat(one.end()).isEqualTo(new TraceEnd.Closed());
    }

    @Test
    void aReceiverThatFallsSilentIsAnAlertWithTimesAndWords() throws Exception {
        Path file = Files.writeString(
                folder.resolve("trace.txt"), "0 gnss " + sentence(BODIES.get(1)) + "\n9000000 - end\n");
        ReplayResult result = replay(file);
        assertThat(result.alerts()).anySatisfy(alert -> {
            assertThat(alert.kind()).isEqualTo("sensor-silent");
            assertThat(alert.place()).isEqualTo("gnss");
            assertThat(alert.raisedS()).isBetween(2.0, 4.0);
            assertThat(alert.clearedS()).isNull();
        });
        assertThat(told).containsAll(result.alerts());
        JsonNode alert = ReplayJson.of(result).at("/alerts/0");
        assertThat(names(alert))
                .containsExactly(
                        "kind",
                        "place",
                        "state",
                        "since_s",
                        "raised_s",
                        "cleared_s",
                        "value",
                        "limit",
                        "unit",
                        "why",
                        "act");
    }

    @Test
    void aTraceThatIsNoneIsRefusedWithFileLineAndWhatIsAllowed() throws Exception {
        Path file = Files.writeString(folder.resolve("bad.txt"), "1 gnss $A\n0 gnss $B\n");
        assertThatThrownBy(() -> replay(file))
                .isInstanceOf(TraceFormatException.class)
                .hasMessageContaining("bad.txt:2")
                .hasMessageContaining("allowed: ");
        assertThatThrownBy(() -> replay(folder.resolve("gone.txt")))
                .isInstanceOf(ConfigException.class)
                .hasMessageContaining("no such file");
    }

    private static List<String> names(JsonNode node) {
        List<String> names = new ArrayList<>();
        node.fieldNames().forEachRemaining(names::add);
        return names;
    }
}
