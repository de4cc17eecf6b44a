package evenfall.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Recordings of three real receivers, which may lie beside the repository; where they do not, their tests say that they did
 * not run. They come from the receiver regression logs of the gpsd project (BSD-2-Clause). One recording is always there:
 * invented, with a torn line, a changed digit and chatter in it. The expected numbers of all were counted by another program,
 * line by line in Python, that shares nothing with the decoder.
 */
class ReceiverRecordingsTest {

    private record Recording(
            String file,
            WireCounts counts,
            long rmc,
            long vtg,
            long gga,
            long fixes,
            String firstUtc,
            String lastUtc,
            double meanMps,
            double maxMps) {}

    private static final Recording INVENTED = new Recording(
            "invented-receiver.nmea",
            new WireCounts(84, 61, 20, 1, 2, 0, 2, 92),
            21,
            20,
            20,
            18,
            "2026-03-14T08:15:03Z",
            "2026-03-14T08:15:20Z",
            3.7551872222222227,
            6.4357);

    private static final List<Recording> RECORDINGS = List.of(
            new Recording(
                    "receiver-a.nmea",
                    new WireCounts(325, 220, 105, 0, 0, 0, 0, 0),
                    74,
                    73,
                    73,
                    68,
                    "2007-04-08T09:53:04.802Z",
                    "2007-04-08T09:54:15.787Z",
                    1.0190539215686276,
                    2.669966666666667),
            new Recording(
                    "receiver-b.nmea",
                    new WireCounts(4999, 432, 4567, 0, 0, 0, 0, 0),
                    146,
                    148,
                    138,
                    146,
                    "2018-08-20T09:47:37Z",
                    "2018-08-20T09:50:03Z",
                    2.9274003044140033,
                    3.4467777777777777),
            new Recording(
                    "receiver-c.nmea",
                    new WireCounts(861, 180, 681, 0, 0, 0, 0, 0),
                    60,
                    60,
                    60,
                    23,
                    "2022-09-11T19:15:03.010Z",
                    "2022-09-11T19:15:33.980Z",
                    1.2704541062801933,
                    3.343888888888889));

    @TestFactory
    Stream<DynamicTest> realReceiversAreReadWithoutLoss() {
        return RECORDINGS.stream()
                .map(recording -> DynamicTest.dynamicTest(
                        recording.file(), () -> check(recording, Recordings.beside(recording.file()))));
    }

    @Test
    void anInventedReceiverIsReadWithItsFaultsCounted() throws IOException {
        check(INVENTED, Recordings.invented(INVENTED.file()));
    }

    private static void check(Recording recording, byte[] bytes) {
        SeenSentences seen = new SeenSentences();
        SentenceStream stream = new SentenceStream(seen);
        for (int at = 0; at < bytes.length; at += 64) {
            stream.accept(bytes, at, Math.min(64, bytes.length - at));
        }
        stream.cut();

        assertThat(stream.counts()).isEqualTo(recording.counts());
        assertThat(count(seen, "rmc")).isEqualTo(recording.rmc());
        assertThat(count(seen, "vtg")).isEqualTo(recording.vtg());
        assertThat(count(seen, "gga")).isEqualTo(recording.gga());
        List<SeenSentences.Seen> fixes = seen.all.stream()
                .filter(s -> s.kind().equals("rmc") && s.fields().get("fix").equals(true))
                .toList();
        assertThat(fixes).hasSize((int) recording.fixes());
        assertThat(utc(fixes.get(0))).isEqualTo(Instant.parse(recording.firstUtc()));
        assertThat(utc(fixes.get(fixes.size() - 1))).isEqualTo(Instant.parse(recording.lastUtc()));
        double sum = 0;
        double max = 0;
        for (SeenSentences.Seen fix : fixes) {
            double speedMps = (Double) fix.fields().get("speedMps");
            sum += speedMps;
            max = Math.max(max, speedMps);
        }
        assertThat(sum / fixes.size()).isCloseTo(recording.meanMps(), within(1e-9));
        assertThat(max).isCloseTo(recording.maxMps(), within(1e-9));
    }

    private static long count(SeenSentences seen, String kind) {
        return seen.all.stream().filter(s -> s.kind().equals(kind)).count();
    }

    private static Instant utc(SeenSentences.Seen rmc) {
        return Instant.ofEpochMilli((Long) rmc.fields().get("utcEpochMs"));
    }
}
