package evenfall.sense;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
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

    @ParameterizedTest
    @CsvSource({
        // Amplitude at 1.2 Hz, m; error of height, m, and of its rate, m/s, that is allowed. 0.2 m is 1.5 m/s; 0.05 m
        // is ordinary rough ground.
        "0.20, 0.05, 1.0",
        "0.05, 0.0125, 0.25"
    })
    void aTipIsFollowedWithItsRate(double amplitudeM, double errorM, double errorMps) {
        double phasePs = 2 * Math.PI * 1.2;
        for (int i = 0; i < 200; i++) {
            long us = i * 50_000L;
            // The sensor is as late as it is taken to be.
            double seenS = us * 1e-6 - HeightSense.LAG_US * 1e-6;
            sense.onEcho(us, echoUs(0.7 + amplitudeM * Math.sin(phasePs * seenS), 10), 10);
            double nowS = us * 1e-6 + 0.02;
            if (i > 40) {
                Quantity height = sense.heightM(us + 20_000, SILENCE_US);
                Quantity rate = sense.rateMps(us + 20_000, SILENCE_US);
                assertThat(height.get()).isCloseTo(0.6 + amplitudeM * Math.sin(phasePs * nowS), within(errorM));
                assertThat(rate.get()).isCloseTo(amplitudeM * phasePs * Math.cos(phasePs * nowS), within(errorMps));
            }
        }
    }

    @Test
    void aTipThatStrikesAndWhipsIsFoundAgain() {
        // Beyond what a wing does on its own: 0.6 m at 1.4 Hz, 5 m/s. It may be lost for some echoes, not for long.
        for (int i = 0; i < 200; i++) {
            double saysM = 0.75 + (i < 100 ? 0 : 0.6 * Math.sin(2 * Math.PI * 1.4 * (i - 100) * 0.05));
            sense.onEcho(i * 50_000L, echoUs(saysM, 10), 10);
            assertThat(sense.heightM(i * 50_000L, 400_000).isKnown())
                    .as("echo %d", i)
                    .isTrue();
        }
    }

    @Test
    void doubleEchoesNowAndThenDoNotShow() {
        long seed = 4;
        Random random = new Random(seed);
        for (int i = 0; i < 400; i++) {
            double distanceM = 0.6 + 0.004 * random.nextGaussian();
            sense.onEcho(i * 50_000L, echoUs(random.nextDouble() < 0.3 && i > 5 ? 2 * distanceM : distanceM, 10), 10);
            assertThat(sense.heightM(i * 50_000L, SILENCE_US).get())
                    .as("echo %d, seed %d", i, seed)
                    .isBetween(0.46, 0.54);
        }
    }

    @Test
    void aStepOfTheGroundIsTakenAfterThreeEchoes() {
        for (int i = 0; i < 20; i++) {
            sense.onEcho(i * 50_000L, echoUs(0.6, 10), 10);
        }
        for (int i = 20; i < 23; i++) {
            sense.onEcho(i * 50_000L, echoUs(1.0, 10), 10);
        }

        assertThat(sense.heightM(22 * 50_000L, SILENCE_US).get()).isCloseTo(0.9, within(0.001));
    }

    @Test
    void theVarianceIsThatOfTheScatterAndOfAirThatIsNotMeasured() {
        long seed = 5;
        Random random = new Random(seed);
        HeightSense fixed = new HeightSense(0.10);
        double squares = 0;
        for (int i = 0; i < 2000; i++) {
            double distanceM = 0.6 + 0.01 * random.nextGaussian();
            sense.onEcho(i * 50_000L, echoUs(distanceM, 10), 10, true);
            fixed.onEcho(i * 50_000L, echoUs(distanceM, 10), 10, false);
            double off = sense.heightM(i * 50_000L, SILENCE_US).get() - 0.5;
            squares += off * off;
        }
        Quantity height = sense.heightM(1999 * 50_000L, SILENCE_US);
        // It allows for motion and ground that are not here, so it is rather too careful.
        assertThat(height.sd() / Math.sqrt(squares / 2000)).as("seed %d", seed).isBetween(0.9, 2.5);
        // 6 °C are 1.06 % of 0.6 m.
        assertThat(fixed.heightM(1999 * 50_000L, SILENCE_US).variance() - height.variance())
                .isCloseTo(0.0064 * 0.0064 - 0.0016 * 0.0016, within(3e-6));
    }
}
