package evenfall.sense;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeightSenseTest {
    private static final long SILENCE_US = 1_000_000;

    private final HeightSense sense = new HeightSense(0.10);

    private static long echoUs(double distanceM, double airC) {
        return Math.round(2e6 * distanceM / HeightSense.soundMps(airC));
    }

    @ParameterizedTest
    @CsvSource({
        // Arithmetic of 331.3 sqrt(1 + T/273.15), the form that general acoustics pages give.
        "-10, 325.18",
        "0, 331.30",
        "5, 334.32",
        "10, 337.31",
        "15, 340.28",
        "20, 343.21",
        "25, 346.13",
        "30, 349.02"
    })
    void soundIsAsFastAsTheTableSays(double airC, double mps) {
        assertThat(HeightSense.soundMps(airC)).isCloseTo(mps, within(0.005));
    }

    @ParameterizedTest
    @CsvSource({
        // Measured tables differ by humidity; within half a per cent: kinetic theory 330.74 and 342.63 m/s (J. O.
        // Smith, CCRMA,
        // Stanford), 331.4 + 0.606 T + 0.0124 RH at 30 % (a forum's table, low authority): 343.89 at 20 °C.
        "0, 330.74",
        "20, 342.63",
        "20, 343.89",
        "35, 352.98"
    })
    void soundAgreesWithPublishedSpeeds(double airC, double mps) {
        assertThat(HeightSense.soundMps(airC) / mps).isCloseTo(1, within(0.005));
    }

    @Test
    void anEchoIsAHeight() {
        // 0.600 m at 20 °C is 3.4964 ms there and back (arithmetic).
        assertThat(echoUs(0.6, 20)).isEqualTo(3496);
        sense.onEcho(0, 3496, 20);

        assertThat(sense.heightM(0, SILENCE_US).get()).isCloseTo(0.50, within(2e-4));
    }

    @Test
    void takingWarmAirForCoolReadsTenMillimetresShort() {
        sense.onEcho(0, echoUs(0.6, 30), 20);

        assertThat(sense.heightM(0, SILENCE_US).get() + 0.10).isCloseTo(0.600 - 0.0100, within(2e-4));
    }

    @Test
    void aSingleSpikeDoesNotShow() {
        for (int i = 0; i < 10; i++) {
            double distanceM = i == 6 ? 1.2 : 0.6 + 0.001 * i;
            sense.onEcho(i * 50_000L, echoUs(distanceM, 10), 10);
            assertThat(sense.heightM(i * 50_000L, SILENCE_US).get()).isBetween(0.49, 0.52);
        }
    }

    @Test
    void noEchoMakesItUnknownWithTheReasonAndNothingOldComesBack() {
        sense.onEcho(0, echoUs(0.6, 10), 10);
        for (long us = 50_000; us <= 1_500_000; us += 50_000) {
            sense.onNoEcho(us);
        }
        assertThat(sense.heightM(900_000, SILENCE_US).isKnown()).isTrue();
        assertThat(sense.heightM(1_500_000, SILENCE_US).unknown()).isEqualTo(Unknown.NO_ECHO);
        sense.onEcho(1_550_000, echoUs(0.9, 10), 10);
        assertThat(sense.heightM(1_550_000, SILENCE_US).get()).isCloseTo(0.8, within(1e-3));
    }

    @Test
    void anEchoFromTooFarIsOutOfRange() {
        sense.onEcho(0, echoUs(3.2, 10), 10);

        assertThat(sense.heightM(0, SILENCE_US).unknown()).isEqualTo(Unknown.OUT_OF_RANGE);
        assertThat(sense.heightM(2_000_000, SILENCE_US).unknown()).isEqualTo(Unknown.SILENT);
    }
}
