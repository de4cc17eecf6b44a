package evenfall.sim.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class SentenceWriterTest {
    /**
     * The checksums of sentences seen in the open: gpsinformation.org's GGA, and VTG of the NOAA PSL ATOMIC 2020 cruise log (US
     * Government, public domain).
     */
    @Test
    void givesThePublishedChecksums() {
        assertThat(text(new SentenceWriter()
                        .begin("GP", "GGA")
                        .word("123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,")))
                .endsWith("*47\r\n");
        assertThat(text(new SentenceWriter().begin("GP", "VTG").word("71.49,T,88.25,M,9.86,N,18.27,K,D")))
                .endsWith("*11\r\n");
    }

    @Test
    void refusesASentenceLongerThanTheEnvelopeAllows() {
        SentenceWriter writer = new SentenceWriter().begin("PEVF", "H").word("9".repeat(90));
        assertThatThrownBy(writer::end).isInstanceOf(IllegalStateException.class);
    }

    @Test
    void roundsMinutesUpIntoTheNextDegree() {
        assertThat(text(new SentenceWriter().begin("GP", "X").angle(-9.9999999999, 3, 'E', 'W')))
                .startsWith("$GPX,01000.00000,W*");
    }

    @Test
    void aSentenceArrivesWhenItsLastByteHasAndWaitsForTheOneBefore() {
        long[] arrivedUs = new long[2];
        int[] count = new int[1];
        Uart uart = new Uart("hub", 115_200, (timeUs, port, bytes) -> arrivedUs[count[0]++] = timeUs);

        uart.send(1_000_000, new byte[82]);
        uart.send(1_001_000, new byte[30]);

        // 82 bytes of ten bits at 115200 bits a second take 7118.06 µs, 30 take 2604.17 µs.
        assertThat(arrivedUs).containsExactly(1_007_119, 1_009_724);
    }

    private static String text(SentenceWriter writer) {
        return new String(writer.end(), StandardCharsets.US_ASCII);
    }
}
