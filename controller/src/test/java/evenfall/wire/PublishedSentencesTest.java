package evenfall.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Sentences and their meaning as others have published them; each with its source. */
class PublishedSentencesTest {

    private static final double KNOT_MPS = 1852.0 / 3600.0;

    /** The printed degrees have nine decimals. */
    private static final double PRINTED_DEG = 5e-10;

    private SeenSentences.Seen decoded(String sentence) {
        return SeenSentences.of(sentence).only();
    }

    private static WireCounts counts(String sentence) {
        SentenceStream stream = new SentenceStream(new SentenceHandler() {});
        byte[] bytes = (sentence + "\r\n").getBytes(StandardCharsets.US_ASCII);
        stream.accept(bytes, 0, bytes.length);
        return stream.counts();
    }

    private void number(SeenSentences.Seen seen, String key, double expected, double tolerance) {
        assertThat((Double) seen.fields().get(key)).as(key).isCloseTo(expected, within(tolerance));
    }

    private void rmc(String sentence, String utc, double latitudeDeg, double longitudeDeg, double knots) {
        SeenSentences.Seen seen = decoded(sentence);
        assertThat(seen.kind()).isEqualTo("rmc");
        assertThat(seen.fields()).containsEntry("fix", true);
        assertThat(seen.fields()).containsEntry("utcEpochMs", Instant.parse(utc).toEpochMilli());
        number(seen, "latitudeDeg", latitudeDeg, PRINTED_DEG);
        number(seen, "longitudeDeg", longitudeDeg, PRINTED_DEG);
        number(seen, "speedMps", knots * KNOT_MPS, 1e-12);
    }

    @Test
    void classicRmcOfTheTextbooks() {
        // Source: npm nmea-simple 3.3.0, its tests (MIT); also gpsinformation.org.
        String sentence = "$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A";
        rmc(sentence, "1994-03-23T12:35:19Z", 48.1173, 11.516666667, 22.4);
        number(decoded(sentence), "courseDeg", 84.4, 0);
        number(decoded(sentence), "speedMps", 41.4848 / 3.6, 1e-12);
    }

    @Test
    void classicGgaOfTheTextbooks() {
        // Source: gpsinformation.org.
        SeenSentences.Seen seen = decoded("$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47");
        assertThat(seen.fields()).containsEntry("quality", 1L).containsEntry("satellites", 8L);
        number(seen, "hdop", 0.9, 0);
        number(seen, "altitudeM", 545.4, 0);
        number(seen, "latitudeDeg", 48.1173, PRINTED_DEG);
    }

    @Test
    void vtgOfTheLibrariesTests() {
        // Source: npm nmea-simple 3.3.0, its tests (MIT).
        SeenSentences.Seen seen = decoded("$IIVTG,210.43,T,210.43,M,5.65,N,,,A*67");
        number(seen, "courseDeg", 210.43, 0);
        number(seen, "speedMps", 5.65 * KNOT_MPS, 1e-12);
        number(decoded("$XXVTG,210.43,T,209.43,M,2.91,N,5.38,K,A*38"), "speedMps", 5.38 / 3.6, 0.005);

        // Source: Debian golang-github-adrianmo-go-nmea-dev 1.7.0, its tests (MIT).
        seen = decoded("$GPVTG,45.5,T,67.5,M,30.45,N,56.40,K*4B");
        number(seen, "courseDeg", 45.5, 0);
        number(seen, "speedMps", 56.3934 / 3.6, 1e-12);
        assertThat(seen.fields()).doesNotContainKey("mode");
        seen = decoded("$GPVTG,220.86,T,,M,2.550,N,4.724,K,A*34");
        number(seen, "courseDeg", 220.86, 0);
        number(seen, "speedMps", 2.55 * KNOT_MPS, 1e-12);
        assertThat(seen.fields()).containsEntry("mode", 'A');
    }

    @Test
    void rmcAndGgaOfAGoLibrarysTests() {
        // Source: Debian golang-github-adrianmo-go-nmea-dev 1.7.0, its tests (MIT).
        rmc(
                "$GNRMC,220516,A,5133.82,N,00042.24,W,173.8,231.8,130694,004.2,W*6E",
                "1994-06-13T22:05:16Z",
                51.563666667,
                -0.704,
                173.8);
        String emptyCourse = "$GNRMC,142754.0,A,4302.539570,N,07920.379823,W,0.0,,070617,0.0,E,A*21";
        rmc(emptyCourse, "2017-06-07T14:27:54Z", 43.042326167, -79.339663717, 0.0);
        assertThat(decoded(emptyCourse).fields()).doesNotContainKey("courseDeg").containsEntry("mode", 'A');
        SeenSentences.Seen gga = decoded("$GNGGA,203415.000,6325.6138,N,01021.4290,E,1,8,2.42,72.5,M,41.5,M,,*7C");
        assertThat(gga.fields()).containsEntry("timeOfDayMs", ((20 * 60 + 34) * 60 + 15) * 1000L);
        number(gga, "hdop", 2.42, 0);
        number(gga, "altitudeM", 72.5, 0);
    }

    @Test
    void eightDecimalsOfAShipsReceiver() {
        // Source: NOAA PSL, ATOMIC 2020 cruise log (US Government, public domain),
        // downloads.psl.noaa.gov/psd3/cruises/ATOMIC_2020. The GGA has 86 characters with CR LF, the RMC 84.
        String gga = "$GPGGA,060000.00,1353.25162451,N,05445.30213512,W,2,06,1.2,2.9,M,-40.8,M,5.0,0138*76";
        assertThat(gga.length() + 2).isEqualTo(86);
        SeenSentences.Seen seen = decoded(gga);
        number(seen, "latitudeDeg", 13.887527075, PRINTED_DEG);
        number(seen, "longitudeDeg", -54.755035585, PRINTED_DEG);
        assertThat(seen.fields()).containsEntry("quality", 2L).containsEntry("satellites", 6L);

        String rmc = "$GPRMC,060000.00,A,1353.25162451,N,05445.30213512,W,10.17,70.52,080220,16.8,W,D*05";
        assertThat(rmc.length() + 2).isEqualTo(84);
        rmc(rmc, "2020-02-08T06:00:00Z", 13.887527075, -54.755035585, 10.17);

        // The same log prints both units; km/h to 0.01 and knots to 0.01 leave half of 0.02 km/h open.
        number(decoded("$GPVTG,70.52,T,87.27,M,10.17,N,18.83,K,D*29"), "speedMps", 18.83 / 3.6, 0.004);
        number(decoded("$GPVTG,71.49,T,88.25,M,9.86,N,18.27,K,D*11"), "speedMps", 18.27 / 3.6, 0.004);
        number(decoded("$GPVTG,72.23,T,88.98,M,10.09,N,18.69,K,D*2D"), "speedMps", 18.69 / 3.6, 0.004);
        assertThat(counts("$GPHDT,72.14,T*35").ignored()).isEqualTo(1);
    }

    @Test
    void theLongestSentencesOfAnRtkReceiver() {
        // Source: gpsd, test/daemon/nmea-fuzzy-cases.log, taken from its nmea-rtk.log (BSD-2-Clause). Degrees are
        // worked out by hand: 41 + 34.49941239/60, 93 + 45.03495785/60.
        String gga = "$GNGGA,132827.20,4134.49941239,N,09345.03495785,W,2,10,0.9,280.340,M,-31.442,M,13.2,0133*5A";
        assertThat(gga.length() + 2).isEqualTo(93);
        SeenSentences.Seen seen = decoded(gga);
        number(seen, "latitudeDeg", 41.574990207, PRINTED_DEG);
        number(seen, "longitudeDeg", -93.750582631, PRINTED_DEG);
        number(seen, "altitudeM", 280.34, 0);
        String rmc = "$GNRMC,132827.60,A,4134.49945049,N,09345.03503394,W,0.771,12.921,180320,11.5985,E,D*0C";
        assertThat(rmc.length() + 2).isEqualTo(88);
        rmc(rmc, "2020-03-18T13:28:27.600Z", 41.574990842, -93.750583899, 0.771);
    }

    @Test
    void sentencesOfNmeaRevealed() {
        // Source: E. S. Raymond, NMEA Revealed v2.23, 2019 (gpsd 3.22, www/NMEA.adoc, BSD-2-Clause).
        SeenSentences.Seen gga = decoded("$GNGGA,001043.00,4404.14036,N,12118.85961,W,1,12,0.98,1113.0,M,-21.3,M,,*47");
        number(gga, "latitudeDeg", 44.069006, 5e-7);
        number(gga, "longitudeDeg", -121.314327, 5e-7);
        assertThat(gga.fields()).containsEntry("satellites", 12L);
        number(gga, "hdop", 0.98, 0);
        number(gga, "altitudeM", 1113.0, 0);

        SeenSentences.Seen rmc = decoded("$GNRMC,001031.00,A,4404.13993,N,12118.86023,W,0.146,,100117,,,A*7B");
        number(rmc, "speedMps", 0.146 * KNOT_MPS, 1e-12);
        assertThat(rmc.fields())
                .doesNotContainKey("courseDeg")
                .containsEntry(
                        "utcEpochMs", Instant.parse("2017-01-10T00:10:31Z").toEpochMilli());
    }

    @Test
    void sentencesOfReceiverRegressionLogs() {
        // Source: gpsd 3.22, test/daemon/bt451.log and its expected output bt451.log.chk (BSD-2-Clause). Its date is
        // left out: it moves it by the weeks of a receiver's rollover.
        SeenSentences.Seen rmc = decoded("$GPRMC,143308.00,A,5546.81975,N,02334.70604,E,32.000,221.54,091209,,,A*52");
        number(rmc, "latitudeDeg", 55.780329167, PRINTED_DEG);
        number(rmc, "longitudeDeg", 23.578434, PRINTED_DEG);
        number(rmc, "speedMps", 16.462, 0.0005);
        number(rmc, "courseDeg", 221.54, 0);

        // The receiver printed 59.295 km/h for 32.000 kn = 59.264 km/h: a twentieth of a per cent.
        SeenSentences.Seen vtg = decoded("$GPVTG,221.54,T,,M,32.000,N,59.295,K,A*3E");
        number(vtg, "speedMps", 59.295 / 3.6, 16.462 * 0.001);
        number(vtg, "speedMps", 32.0 * KNOT_MPS, 1e-12);

        SeenSentences.Seen standing = decoded("$GPVTG,,T,,M,0.253,N,0.469,K,A*2C");
        assertThat(standing.fields()).doesNotContainKey("courseDeg");
        number(standing, "speedMps", 0.469 / 3.6, 0.001);

        assertThat(decoded("$GPRMC,,V,,,,,,,,,,N*53").fields())
                .containsOnlyKeys("fix", "mode")
                .containsEntry("fix", false);
        assertThat(decoded("$GPVTG,,,,,,,,,N*30").fields()).containsOnlyKeys("mode");
    }

    @Test
    void aTrackThatIsNoNumberIsMalformedThoughItsChecksumHolds() {
        // Source: Debian golang-github-adrianmo-go-nmea-dev 1.7.0, its tests: "bad true track". The two fields are only
        // swapped, and exclusive or does not see that: 4B is the right checksum of this form too.
        assertThat(counts("$GPVTG,T,45.5,67.5,M,30.45,N,56.40,K*4B")).isEqualTo(new WireCounts(1, 0, 0, 0, 1, 0, 0, 0));
        assertThat(counts("$GPVTG,T,45.5,67.5,M,30.45,N,56.40,K*4C")).isEqualTo(new WireCounts(1, 0, 0, 1, 0, 0, 0, 0));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "$SDDPT,0.5,0.5,*AA", // right is 7B; Debian golang-github-adrianmo-go-nmea-dev 1.7.0, its tests
                "$GPVTG,309.62,T, ,M,0.13,N,0.2,K*6E", // right is 4E; as printed in an open wiki
            })
    void publishedWrongChecksumsAreRejected(String sentence) {
        assertThat(counts(sentence)).isEqualTo(new WireCounts(1, 0, 0, 1, 0, 0, 0, 0));
    }

    @Test
    void theSameVtgWithoutTheBlankHoldsThePrintedChecksum() {
        SeenSentences.Seen seen = decoded("$GPVTG,309.62,T,,M,0.13,N,0.2,K*6E");
        number(seen, "courseDeg", 309.62, 0);
        number(seen, "speedMps", 0.13 * KNOT_MPS, 1e-12);
    }

    @Test
    void aSentenceWithoutItsStarIsMalformed() {
        // Source: npm ggencoder, its sample data.
        assertThat(counts("$GPRMC,182816.26,A,4916.45,N,10342.0309,E,00.00,000.00,210115,0,0,A67"))
                .isEqualTo(new WireCounts(1, 0, 0, 0, 1, 0, 0, 0));
    }
}
