package evenfall.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SentenceStreamTest {

    private final SeenSentences seen = new SeenSentences();
    private final SentenceStream stream = new SentenceStream(seen);

    private void send(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
        stream.accept(bytes, 0, bytes.length);
    }

    @Test
    void aLoneLineFeedEndsALineToo() {
        send(signed("PEVFQ,1,2,3") + "\n" + signed("PEVFQ,1,2,3") + "\r\n");
        assertThat(stream.counts()).isEqualTo(new WireCounts(2, 2, 0, 0, 0, 0, 0, 0));
    }

    @Test
    void aCarriageReturnAloneEndsNothing() {
        send(signed("PEVFQ,1,2,3") + "\r" + signed("PEVFQ,4,5,6") + "\r\n");
        assertThat(stream.counts()).isEqualTo(new WireCounts(2, 1, 0, 0, 1, 0, 0, 0));
        assertThat(seen.only().fields()).containsEntry("tickUs", 4L);
    }

    @Test
    void aHalfReadLineIsNotCountedUntilItIsDecided() {
        send(signed("PEVFQ,1,2,3"));
        assertThat(stream.counts()).isEqualTo(WireCounts.NONE);
        send("\r");
        assertThat(stream.counts()).isEqualTo(WireCounts.NONE);
        send("\n");
        assertThat(stream.counts().accepted()).isEqualTo(1);
    }

    @Test
    void aDollarInTheMiddleStartsANewSentenceAndTheTornOneIsMalformed() {
        send("$PEVFQ,12" + signed("PEVFT,1,2") + "\r\n");
        assertThat(stream.counts()).isEqualTo(new WireCounts(2, 1, 0, 0, 1, 0, 0, 0));
        assertThat(seen.only().kind()).isEqualTo("air");
    }

    @Test
    void aSentenceBehindNoiseIsFoundAndTheNoiseCounted() {
        send("?x" + signed("PEVFT,1,2") + "\r\n");
        assertThat(stream.counts()).isEqualTo(new WireCounts(1, 1, 0, 0, 0, 0, 1, 2));
    }

    @Test
    void otherLinesAreCountedWithTheirLineEnds() {
        send("hello\r\n\n!AIVDM,1*00\n");
        assertThat(stream.counts()).isEqualTo(new WireCounts(0, 0, 0, 0, 0, 0, 3, 7 + 1 + 12));
    }

    @ParameterizedTest
    @ValueSource(strings = {"\0", "\t", "\u007F", "\u0080", "\u00FF", "\u001B"})
    void charactersOutsidePrintableAsciiAreMalformedEvenWithTheRightChecksum(String bad) {
        send(signed("GPTXT,a" + bad + "b") + "\r\n" + signed("PEVFQ,1,2," + bad) + "\r\n");
        assertThat(stream.counts()).isEqualTo(new WireCounts(2, 0, 0, 0, 2, 0, 0, 0));
    }

    @Test
    void theHubMayFill82CharactersAndNotOneMore() {
        String full = signed("PEVFH,4294967295" + ",999999".repeat(7));
        String body = "PEVFZ," + "1".repeat(82 - 2 - 1 - 3 - "PEVFZ,".length());
        assertThat(signed(body).length() + 2).isEqualTo(82);
        send(signed(body) + "\r\n" + signed(body + "1") + "\r\n" + full + "\r\n");
        assertThat(stream.counts()).isEqualTo(new WireCounts(3, 1, 1, 0, 0, 1, 0, 0));
    }

    @Test
    void othersMayFill96CharactersAndNotOneMore() {
        String body = "GPTXT," + "1".repeat(96 - 2 - 1 - 3 - "GPTXT,".length());
        assertThat(signed(body).length() + 2).isEqualTo(96);
        send(signed(body) + "\r\n" + signed(body + "1") + "\n" + signed(body) + "\n");
        assertThat(stream.counts()).isEqualTo(new WireCounts(3, 0, 2, 0, 0, 1, 0, 0));
    }

    @Test
    void anEndlessLineIsCountedOnceAndTheNextSentenceIsRead() {
        send("$" + "A".repeat(100_000));
        assertThat(stream.counts()).isEqualTo(new WireCounts(1, 0, 0, 0, 0, 1, 0, 0));
        send("A".repeat(100_000) + "\r\n" + signed("PEVFT,1,2") + "\r\n");
        assertThat(stream.counts()).isEqualTo(new WireCounts(2, 1, 0, 0, 0, 1, 0, 0));
    }

    @Test
    void aCutRejectsTheHalfReadSentenceAndTheNextByteStartsALine() {
        send("$PEVFQ,12");
        stream.cut();
        send("34,5*00\r\n" + signed("PEVFT,1,2") + "\r\n");
        stream.cut();
        assertThat(stream.counts()).isEqualTo(new WireCounts(2, 1, 0, 0, 1, 0, 1, 9));
    }

    @Test
    void aCutInTheRestOfARejectedLineCountsNothingTwice() {
        send("$GP\0rest");
        stream.cut();
        stream.cut();
        assertThat(stream.counts()).isEqualTo(new WireCounts(1, 0, 0, 0, 1, 0, 0, 0));
    }

    @Test
    void lowerCaseChecksumsAreTaken() {
        String upper = signed("PEVFT,1000000,1875");
        send(upper.toLowerCase(Locale.ROOT).replace("pevft", "PEVFT") + "\r\n");
        assertThat(stream.counts().accepted()).isEqualTo(1);
    }

    @Test
    void anAbsentFieldThrowsWhenAsked() {
        SentenceStream strict = new SentenceStream(new SentenceHandler() {
            @Override
            public void onRmc(Rmc rmc) {
                assertThatThrownBy(rmc::utcEpochMs).isInstanceOf(IllegalStateException.class);
                assertThatThrownBy(rmc::timeOfDayMs).isInstanceOf(IllegalStateException.class);
                assertThatThrownBy(rmc::latitudeDeg).isInstanceOf(IllegalStateException.class);
                assertThatThrownBy(rmc::longitudeDeg).isInstanceOf(IllegalStateException.class);
                assertThatThrownBy(rmc::speedMps).isInstanceOf(IllegalStateException.class);
                assertThatThrownBy(rmc::courseDeg).isInstanceOf(IllegalStateException.class);
                assertThatThrownBy(rmc::mode).isInstanceOf(IllegalStateException.class);
            }

            @Override
            public void onVtg(Vtg vtg) {
                assertThatThrownBy(vtg::speedMps).isInstanceOf(IllegalStateException.class);
                assertThatThrownBy(vtg::courseDeg).isInstanceOf(IllegalStateException.class);
                assertThatThrownBy(vtg::mode).isInstanceOf(IllegalStateException.class);
            }

            @Override
            public void onGga(Gga gga) {
                assertThatThrownBy(gga::timeOfDayMs).isInstanceOf(IllegalStateException.class);
                assertThatThrownBy(gga::latitudeDeg).isInstanceOf(IllegalStateException.class);
                assertThatThrownBy(gga::longitudeDeg).isInstanceOf(IllegalStateException.class);
                assertThatThrownBy(gga::quality).isInstanceOf(IllegalStateException.class);
                assertThatThrownBy(gga::satellites).isInstanceOf(IllegalStateException.class);
                assertThatThrownBy(gga::hdop).isInstanceOf(IllegalStateException.class);
                assertThatThrownBy(gga::altitudeM).isInstanceOf(IllegalStateException.class);
            }

            @Override
            public void onFlow(FlowPulses flow) {
                assertThatThrownBy(flow::lastEdgeTickUs).isInstanceOf(IllegalStateException.class);
            }

            @Override
            public void onHeights(HeightEchoes heights) {
                assertThat(heights.sensors()).isEqualTo(2);
                assertThatThrownBy(() -> heights.echoUs(0)).isInstanceOf(IllegalStateException.class);
                assertThat(heights.echoUs(1)).isEqualTo(7);
                assertThatThrownBy(() -> heights.hasEcho(2)).isInstanceOf(IndexOutOfBoundsException.class);
                assertThatThrownBy(() -> heights.echoUs(-1)).isInstanceOf(IndexOutOfBoundsException.class);
            }

            @Override
            public void onPressure(PressureCurrent pressure) {
                assertThatThrownBy(pressure::currentUa).isInstanceOf(IllegalStateException.class);
            }

            @Override
            public void onSections(SectionSwitches sections) {
                assertThatThrownBy(sections::mask).isInstanceOf(IllegalStateException.class);
                assertThatThrownBy(() -> sections.isOn(0)).isInstanceOf(IllegalStateException.class);
                assertThatThrownBy(() -> sections.isOn(32)).isInstanceOf(IndexOutOfBoundsException.class);
            }

            @Override
            public void onAir(AirTemperature air) {
                assertThatThrownBy(air::temperatureCentidegC).isInstanceOf(IllegalStateException.class);
            }
        });
        String empty = String.join(
                        "\r\n",
                        signed("GPRMC,,,,,,,,,,,,"),
                        signed("GPVTG,,,,,,,,"),
                        signed("GPGGA,,,,,,,,,,,,,,"),
                        signed("PEVFQ,1,0,"),
                        signed("PEVFH,1,,7"),
                        signed("PEVFP,1,"),
                        signed("PEVFS,1,"),
                        signed("PEVFT,1,"))
                + "\r\n";
        byte[] bytes = empty.getBytes(StandardCharsets.US_ASCII);
        strict.accept(bytes, 0, bytes.length);
        assertThat(strict.counts()).isEqualTo(new WireCounts(8, 8, 0, 0, 0, 0, 0, 0));
    }

    @Test
    void aViewForgetsWhatItHeldBefore() {
        for (GoldenTable.Row row : GoldenTable.rows()) {
            send(row.sentence() + "\r\n");
        }
        seen.all.clear();
        send(signed("GNRMC,,,,,,,,,,,,") + "\r\n" + signed("GPVTG,,,,,,,,") + "\r\n" + signed("GPGGA,,,,,,,,,,,,,,")
                + "\r\n" + signed("PEVFQ,1,0,") + "\r\n" + signed("PEVFH,1,") + "\r\n" + signed("PEVFP,1,") + "\r\n"
                + signed("PEVFS,1,") + "\r\n" + signed("PEVFT,1,") + "\r\n");
        assertThat(seen.all.stream().map(s -> s.kind() + s.fields()).toList())
                .containsExactly(
                        "rmc{fix=false}",
                        "vtg{}",
                        "gga{}",
                        "flow{count=0, tickUs=1}",
                        "heights{echoUs=, tickUs=1}",
                        "pressure{tickUs=1}",
                        "sections{tickUs=1}",
                        "air{tickUs=1}");
    }

    @Test
    void sectionsAreReadFromTheLeft() {
        boolean[] on = new boolean[SectionSwitches.MOST_SECTIONS];
        SentenceStream switches = new SentenceStream(new SentenceHandler() {
            @Override
            public void onSections(SectionSwitches sections) {
                for (int i = 0; i < on.length; i++) {
                    on[i] = sections.isOn(i);
                }
            }
        });
        byte[] bytes = (signed("PEVFS,1,80000005") + "\r\n").getBytes(StandardCharsets.US_ASCII);
        switches.accept(bytes, 0, bytes.length);
        for (int i = 0; i < on.length; i++) {
            assertThat(on[i]).as("section %d", i).isEqualTo(i == 0 || i == 2 || i == 31);
        }
    }

    @Test
    void everyDayFrom1980To2079IsItself() {
        for (LocalDate day = LocalDate.of(1980, 1, 1); day.getYear() < 2080; day = day.plusDays(1)) {
            String date = String.format(
                    Locale.ROOT, "%02d%02d%02d", day.getDayOfMonth(), day.getMonthValue(), day.getYear() % 100);
            send(signed("GPRMC,010203.004,V,,,,,,," + date + ",,,N") + "\r\n");
            Instant expected = day.atTime(1, 2, 3, 4_000_000).toInstant(ZoneOffset.UTC);
            assertThat(seen.only().fields()).containsEntry("utcEpochMs", expected.toEpochMilli());
            seen.all.clear();
        }
    }

    @Test
    void numbersAreTheNearestDoubleToWhatIsPrinted() {
        send(signed("GPGGA,,,,,,1,08,0.98765432109,1,M,,M,,") + "\r\n"); // eleven decimals
        assertThat(stream.counts().rejectedMalformed()).isEqualTo(1);
        for (String text : new String[] {"0.1", "0.3", "1113.07", "8848.8600000000", "-0.7", "123456789.123456"}) {
            seen.all.clear();
            send(signed("GPGGA,,,,,,1,08,," + text + ",M,,M,,") + "\r\n");
            assertThat(seen.only().fields()).containsEntry("altitudeM", Double.parseDouble(text));
        }
    }

    @Test
    void tooManyDigitsAreMalformedAndNotWrapped() {
        for (String text : new String[] {"1000000000000000", "18446744073709551617", "0000000000000000001"}) {
            send(signed("GPGGA,,,,,,1,08,," + text + ",M,,M,,") + "\r\n");
        }
        assertThat(stream.counts()).isEqualTo(new WireCounts(3, 0, 0, 0, 3, 0, 0, 0));
    }

    @Test
    void allocatesNothingInTheSteadyState() {
        StringBuilder text = new StringBuilder();
        for (GoldenTable.Row row : GoldenTable.rows()) {
            text.append(row.sentence()).append("\r\n");
        }
        byte[] bytes = text.toString().getBytes(StandardCharsets.US_ASCII);
        SentenceStream quiet = new SentenceStream(new SentenceHandler() {});
        quiet.accept(bytes, 0, bytes.length);
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        threads.getCurrentThreadAllocatedBytes();
        long before = threads.getCurrentThreadAllocatedBytes();
        for (int i = 0; i < 100; i++) {
            quiet.accept(bytes, 0, bytes.length);
        }
        long allocated = threads.getCurrentThreadAllocatedBytes() - before;
        // Over ten thousand sentences: one object each would be some hundred kilobytes.
        assertThat(quiet.counts().sentences()).isGreaterThan(10_000);
        assertThat(allocated).isLessThan(10_000);
    }

    @Test
    void aHandlerThatThrowsLeavesTheStreamSound() {
        int[] calls = {0};
        SentenceStream fragile = new SentenceStream(new SentenceHandler() {
            @Override
            public void onAir(AirTemperature air) {
                calls[0]++;
                throw new IllegalArgumentException("planted");
            }
        });
        byte[] bytes = (signed("PEVFT,1,2") + "\r\n").getBytes(StandardCharsets.US_ASCII);
        for (int i = 0; i < 2; i++) {
            assertThatThrownBy(() -> fragile.accept(bytes, 0, bytes.length)).hasMessage("planted");
        }
        assertThat(calls[0]).isEqualTo(2);
        assertThat(fragile.counts()).isEqualTo(new WireCounts(2, 2, 0, 0, 0, 0, 0, 0));
    }

    @Test
    void aRangeOutsideTheArrayIsRefused() {
        assertThatThrownBy(() -> stream.accept(new byte[3], 1, 3)).isInstanceOf(IndexOutOfBoundsException.class);
    }

    @Test
    void countsAddUpAcrossPorts() {
        WireCounts one = new WireCounts(15, 1, 2, 3, 4, 5, 6, 7);
        WireCounts two = new WireCounts(150, 10, 20, 30, 40, 50, 60, 70);
        assertThat(one.plus(two)).isEqualTo(new WireCounts(165, 11, 22, 33, 44, 55, 66, 77));
        assertThat(one.rejected()).isEqualTo(12);
    }

    /** Puts the envelope around a body; a second, plain way to the checksum. */
    static String signed(String body) {
        int sum = 0;
        for (byte b : body.getBytes(StandardCharsets.ISO_8859_1)) {
            sum ^= b & 0xFF;
        }
        return "$" + body + "*" + String.format(Locale.ROOT, "%02X", sum);
    }
}
