package evenfall.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FlightTest {
    @Test
    void aBallThatLandsHigherTakesTheTextbookTime() {
        // 30 m/s at 45°, lands 10 m above: 3.79 s (OpenStax University Physics 1, §4.3, from memory). Seen from the
        // landing place
        // backwards it starts 10 m up with the landing speed, 26.5 m/s at 36.9°, rising: the same time.
        double upMps = 26.533 * Math.sin(Math.toRadians(36.917));

        assertThat(Flight.timeS(-upMps, 10)).isCloseTo(3.79, within(0.005));
    }

    @Test
    void fireworksFallFromTheirTopInTheTextbookTime() {
        // 70.0 m/s at 75.0° reach 233 m in 6.90 s (OpenStax, fireworks example); they fall back as long.
        assertThat(Flight.timeS(0, 233.1)).isCloseTo(6.90, within(0.01));
    }

    @ParameterizedTest
    @CsvSource({
        // exit m/s level, drop m, time s, reach m; arithmetic with g = 9.80665.
        "2, 0.5, 0.3193, 0.6387",
        "5, 0.5, 0.3193, 1.5966",
        "5, 1.0, 0.4516, 2.258"
    })
    void aLevelJetReachesAsFarAsArithmeticSays(double exitMps, double dropM, double timeS, double reachM) {
        assertThat(Flight.timeS(0, dropM)).isCloseTo(timeS, within(5e-5));
        assertThat(exitMps * Flight.timeS(0, dropM)).isCloseTo(reachM, within(5e-4));
    }

    @Test
    void aSlowJetStraightDownIsSlowerThanAFastOne() {
        assertThat(Flight.timeS(5, 0.5)).isLessThan(Flight.timeS(2, 0.5));
    }

    @Test
    void thereIsNoFlightBelowTheGround() {
        assertThat(Flight.timeS(3, 0)).isZero();
        assertThat(Flight.timeS(3, -1)).isZero();
    }
}
