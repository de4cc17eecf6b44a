package evenfall.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenfall.wire.Recordings;
import evenfall.wire.SentenceHandler;
import evenfall.wire.SentenceStream;
import evenfall.wire.WireCounts;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RawLogTest {

    private static String signed(String body) {
        int sum = 0;
        for (int i = 0; i < body.length(); i++) {
            sum ^= body.charAt(i);
        }
        return "$" + body + "*" + String.format(Locale.ROOT, "%02X", sum) + "\r\n";
    }

    private static String rmc(String time) {
        return signed("GPRMC," + time + ",A,5223.1,N,00423.5,E,5.6,230.5,140426,,,A");
    }

    private static List<TraceEvent> events(String text) throws IOException {
        List<TraceEvent> events = new ArrayList<>();
        TraceSource source = TraceSource.open(Gzip.plain(text), "log");
        assertThat(source).isInstanceOf(RawLog.class);
        assertThat(source.readAll(events::add)).isEqualTo(new TraceEnd.Open());
        return events;
    }

    private static List<Long> timesUs(String... lines) throws IOException {
        return events(String.join("", lines)).stream().map(TraceEvent::timeUs).toList();
    }

    @Test
    void linesKeepTheirBytesAndRemarksAreLeftOut() throws IOException {
        String text = "# kept by hand\n" + rmc("060000") + "$GPGSV,1,1,00*79\n" + "noise\n# more\n\n$half";
        assertThat(events(text))
                .containsExactly(
                        bytes(0, rmc("060000")),
                        bytes(0, "$GPGSV,1,1,00*79\n"),
                        bytes(0, "noise\n"),
                        bytes(0, "\n"),
                        bytes(0, "$half"),
                        bytes(0, "\n"),
                        new TraceEvent.End(0));
    }

    private static TraceEvent bytes(long timeUs, String text) {
        return new TraceEvent.Bytes(timeUs, "gnss", text.getBytes(StandardCharsets.US_ASCII));
    }

    @Test
    void theFirstTimeIsZeroAndLinesWithoutOneShareTheLast() throws IOException {
        String none = signed("GPGSV,1,1,00");
        assertThat(timesUs(none, rmc("060000.200"), none, rmc("060000.400"), none))
                .containsExactly(0L, 0L, 0L, 200_000L, 200_000L, 200_000L);
    }

    @Test
    void everyKindThatCarriesTheTimeIsRead() throws IOException {
        assertThat(timesUs(
                        rmc("060000"),
                        signed("GNGGA,060001.00,,,,,0,00,,,M,,M,,"),
                        signed("GNGNS,060002.00,,,,,NNN,,,,,,"),
                        signed("GPZDA,060003,14,04,2026,00,00"),
                        signed("GPGLL,5223.1,N,00423.5,E,060004,A,A"),
                        signed("GPGBS,060005.00,,,,,,,"),
                        signed("GPGST,060006.00,,,,,,,"),
                        signed("GPVTG,060007.00,T,,M,,N,,K"),
                        rmc("060008").replace("*", "0*")))
                .containsExactly(
                        0L,
                        1_000_000L,
                        2_000_000L,
                        3_000_000L,
                        4_000_000L,
                        5_000_000L,
                        6_000_000L,
                        6_000_000L,
                        6_000_000L,
                        6_000_000L);
    }

    @Test
    void midnightIsOneSecondLikeAnyOther() throws IOException {
        assertThat(timesUs(rmc("235959"), rmc("000000"))).containsExactly(0L, 1_000_000L, 1_000_000L);
    }

    @Test
    void aLittleBackWithinABurstChangesNothing() throws IOException {
        assertThat(timesUs(rmc("060010"), rmc("060009"), rmc("060000"), rmc("060011")))
                .containsExactly(0L, 0L, 0L, 1_000_000L, 1_000_000L);
    }

    @Test
    void aJumpMovesOnByOneSecondAndNeverBack() throws IOException {
        assertThat(timesUs(rmc("060000"), rmc("060100"), rmc("060201"), rmc("060202"), rmc("050000"), rmc("050001")))
                .containsExactly(0L, 60_000_000L, 61_000_000L, 62_000_000L, 63_000_000L, 64_000_000L, 64_000_000L);
    }

    @Test
    void aLogWhoseTimesAddUpToMoreThanAMonthIsRefused() {
        StringBuilder text = new StringBuilder();
        int minutes = 31 * 24 * 60;
        for (int minute = 0; minute <= minutes + 1; minute++) {
            text.append(rmc(String.format(Locale.ROOT, "%02d%02d00", minute / 60 % 24, minute % 60)));
        }
        assertThatThrownBy(() -> events(text.toString()))
                .isInstanceOf(TraceFormatException.class)
                .hasMessageStartingWith("log:" + (minutes + 2) + ": the times of its sentences")
                .hasMessageContaining("allowed: at most 31 days");
    }

    @Test
    void aLineWithoutAnEndComesInPieces() throws IOException {
        List<TraceEvent> events = events("$" + "A".repeat(10_000));
        assertThat(events).hasSize(5);
        assertThat(((TraceEvent.Bytes) events.get(0)).bytes()).hasSize(4096);
        assertThat(((TraceEvent.Bytes) events.get(2)).bytes()).hasSize(10_001 - 2 * 4096);
        assertThat(events("$A*41\n#" + "B".repeat(10_000) + "\n")).hasSize(2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "\r", "\r\n"})
    void aLastLineWithoutALineEndIsJudgedLikeAnyOther(String lineEnd) throws IOException {
        String last = rmc("060001").stripTrailing();
        assertThat(counts(rmc("060000") + last + lineEnd)).isEqualTo(new WireCounts(2, 2, 0, 0, 0, 0, 0, 0));
        // Torn anywhere it is one more sentence that was rejected; a log cut between lines lost nothing.
        for (int cut = 1; cut < last.length(); cut++) {
            assertThat(counts(rmc("060000") + last.substring(0, cut)))
                    .as("cut after %d", cut)
                    .isEqualTo(new WireCounts(2, 1, 0, 0, 1, 0, 0, 0));
        }
        String wrong = last.substring(0, last.length() - 1) + (last.endsWith("0") ? "1" : "0");
        assertThat(counts(rmc("060000") + wrong)).isEqualTo(new WireCounts(2, 1, 0, 1, 0, 0, 0, 0));
    }

    private static WireCounts counts(String log) throws IOException {
        SentenceStream stream = new SentenceStream(new SentenceHandler() {});
        for (TraceEvent event : events(log)) {
            if (event instanceof TraceEvent.Bytes chunk) {
                stream.accept(chunk.bytes(), 0, chunk.bytes().length);
            }
        }
        return stream.counts();
    }

    @Test
    void aPackedLogIsReadLikeAPlainOne() throws IOException {
        String text = rmc("060000") + rmc("060001");
        List<TraceEvent> events = new ArrayList<>();
        TraceSource.open(new ByteArrayInputStream(Gzip.pack(text)), "log").readAll(events::add);
        assertThat(events).isEqualTo(events(text));

        byte[] packed = Gzip.pack(text);
        TraceEnd torn = TraceSource.open(new ByteArrayInputStream(packed, 0, packed.length - 3), "log")
                .readAll(event -> {});
        assertThat(torn).isInstanceOf(TraceEnd.TornTail.class);
    }

    @ParameterizedTest
    @CsvSource({
        "'$GPRMC', true",
        "'!AIVDM', true",
        "'# a remark\n\r\n  # no', false",
        "'# a remark\n\r\n#\n$GPRMC', true",
        "'0 hub $GPRMC', false",
        "'# only $ a remark', false",
        "'', false",
        "' $GPRMC', false",
    })
    void aRawLogIsKnownByItsFirstLine(String text, boolean raw) throws IOException {
        InputStream in = Gzip.plain(text);
        assertThat(TraceReader.isRawLog(in)).isEqualTo(raw);
        assertThat(new String(in.readAllBytes(), StandardCharsets.ISO_8859_1)).isEqualTo(text);
    }

    @Test
    void aStreamThatCannotBeSetBackIsRefused() {
        InputStream in = new InputStream() {
            @Override
            public int read() {
                return -1;
            }
        };
        assertThatThrownBy(() -> TraceReader.isRawLog(in)).isInstanceOf(IllegalArgumentException.class);
    }

    @TestFactory
    Stream<DynamicTest> recordingsOfRealReceiversKeepTheirBytesAndTheirLength() {
        // Microseconds from the first time of day in each log to the last one, read off by eye.
        return Stream.of(
                recording("receiver-a.nmea", 325, 79_977_000L),
                recording("receiver-b.nmea", 4_999, 148_000_000L),
                recording("receiver-c.nmea", 861, 59_020_000L));
    }

    private static DynamicTest recording(String file, int lines, long lastUs) {
        return DynamicTest.dynamicTest(file, () -> keepsBytesAndLength(Recordings.beside(file), 0, lines, lastUs));
    }

    /** Invented; its first line is a remark. The time of day in it goes from 08:15:00 to 08:15:20. */
    @Test
    void anInventedRecordingKeepsItsBytesAndItsLength() throws IOException {
        byte[] bytes = Recordings.invented("invented-receiver.nmea");
        int afterRemark = new String(bytes, StandardCharsets.US_ASCII).indexOf('\n') + 1;
        keepsBytesAndLength(bytes, afterRemark, 84, 20_000_000L);
    }

    private static void keepsBytesAndLength(byte[] bytes, int from, int lines, long lastUs) throws IOException {
        List<TraceEvent> events = new ArrayList<>();
        TraceSource.open(new ByteArrayInputStream(bytes), "log").readAll(events::add);
        assertThat(events.get(events.size() - 1)).isEqualTo(new TraceEvent.End(lastUs));
        SentenceStream whole = new SentenceStream(new SentenceHandler() {});
        whole.accept(bytes, from, bytes.length - from);
        SentenceStream replayed = new SentenceStream(new SentenceHandler() {});
        int chunks = 0;
        for (TraceEvent event : events) {
            if (event instanceof TraceEvent.Bytes chunk) {
                replayed.accept(chunk.bytes(), 0, chunk.bytes().length);
                chunks++;
            }
        }
        assertThat(chunks).isEqualTo(lines);
        assertThat(replayed.counts()).isEqualTo(whole.counts());
    }
}
