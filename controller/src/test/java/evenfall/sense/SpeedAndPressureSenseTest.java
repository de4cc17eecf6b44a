package evenfall.sense;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.rig.Rig;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SpeedAndPressureSenseTest {
    private static final long SILENCE_US = 2_000_000;

    private final SpeedSense speed = new SpeedSense(SILENCE_US);
    private final PressureSense pressure = new PressureSense(new Rig.Pressure("hub", 0.004, 0.020, 0, 1_000_000));

    @Test
    void aSteadySpeedComesOutWithTheScatterOfTheReceiver() {
        long seed = 3;
        Random random = new Random(seed);
        double squares = 0;
        for (int i = 0; i < 600; i++) {
            speed.onFix(i * 100_000L, 5 + 0.03 * random.nextGaussian());
            double off = speed.speedMps(i * 100_000L, SILENCE_US).get() - 5;
            squares += i < 100 ? 0 : off * off;
        }
        Quantity now = speed.speedMps(59_900_000, SILENCE_US);
        // It speaks of now, the readings of a tenth of a second ago; and it knows how good it is.
        assertThat(Math.sqrt(squares / 500)).as("seed %d", seed).isLessThan(0.04);
        assertThat(now.sd() / Math.sqrt(squares / 500)).as("seed %d", seed).isBetween(0.6, 1.7);
        assertThat(now.ageUs()).isZero();
    }

    @Test
    void theReceiversLatenessIsTakenOff() {
        // 0.5 m/s²; the receiver speaks of a tenth of a second ago.
        for (int i = 0; i <= 60; i++) {
            speed.onFix(i * 100_000L, 2 + 0.5 * (0.1 * i - 0.1));
        }

        assertThat(speed.speedMps(6_000_000, SILENCE_US).get()).isCloseTo(5.0, within(0.02));
        assertThat(speed.meanMps(5_500_000, 5_900_000)).isCloseTo(2 + 0.5 * 5.7, within(0.02));
    }

    @Test
    void aTrackOfZeroWhileThereIsNoFixIsNoSpeed() {
        speed.onFix(0, 5.0);
        speed.onNoFix(1_000_000);
        speed.onTrack(1_000_000, 0);

        assertThat(speed.speedMps(1_100_000, SILENCE_US)).isEqualTo(Quantity.unknown(Unknown.NO_FIX, 100_000));
    }

    @Test
    void anRmcWithAFixButNoSpeedLeavesTheSpeedToVtg() {
        for (int i = 0; i < 10; i++) {
            speed.onFixWithoutSpeed(i * 200_000L);
            speed.onTrack(i * 200_000L + 5_000, 4);
        }

        assertThat(speed.speedMps(1_900_000, SILENCE_US).get()).isCloseTo(4, within(1e-9));
    }

    @Test
    void anRmcWithoutFixThatStopsComingHoldsVtgBackNoLonger() {
        speed.onNoFix(0);
        speed.onTrack(1_000_000, 4);
        assertThat(speed.speedMps(1_000_000, SILENCE_US).unknown()).isEqualTo(Unknown.NO_FIX);
        speed.onTrack(2_000_001, 4);

        assertThat(speed.speedMps(2_000_001, SILENCE_US).get()).isEqualTo(4);
    }

    @Test
    void aReceiverThatOnlySendsTracksIsGoodEnough() {
        speed.onTrack(0, 4);

        assertThat(speed.speedMps(0, SILENCE_US).get()).isEqualTo(4);
        assertThat(speed.speedMps(2_000_001, SILENCE_US).unknown()).isEqualTo(Unknown.SILENT);
    }

    @Test
    void aSpeedComesBackWithTheFix() {
        speed.onNoFix(0);
        speed.onFix(100_000, 3);

        assertThat(speed.speedMps(100_000, SILENCE_US).get()).isEqualTo(3);
    }

    @Test
    void rmcAndVtgOfOneEpochCountOnce() {
        SpeedSense once = new SpeedSense(SILENCE_US);
        for (int i = 0; i < 50; i++) {
            double mps = 5 + (i % 3 - 1) * 0.05;
            once.onFix(i * 100_000L, mps);
            speed.onFix(i * 100_000L, mps);
            speed.onTrack(i * 100_000L + 4_000, mps);
        }

        assertThat(speed.speedMps(5_000_000, SILENCE_US).variance())
                .isEqualTo(once.speedMps(5_000_000, SILENCE_US).variance());
    }

    @Test
    void aWheelAloneIsASpeedAndBesideAReceiverTakesItsScale() {
        for (int i = 0; i < 40; i++) {
            speed.onWheel(i * 100_000L, i * 100_000L - 50_000, 5.5, 1e-4);
        }
        assertThat(speed.speedMps(4_000_000, SILENCE_US).get()).isCloseTo(5.5, within(0.01));

        // It turns a tenth too fast.
        for (int i = 40; i < 240; i++) {
            speed.onFix(i * 100_000L, 5.0);
            speed.onWheel(i * 100_000L + 40_000, i * 100_000L - 10_000, 5.5, 1e-4);
        }
        assertThat(speed.speedMps(24_000_000, SILENCE_US).get()).isCloseTo(5.0, within(0.02));

        // The receiver falls silent, the machine slows down: the wheel goes on, at its scale.
        for (int i = 240; i < 280; i++) {
            speed.onWheel(i * 100_000L, i * 100_000L - 50_000, 1.1 * Math.max(4.0, 5.0 - 0.05 * (i - 240)), 1e-4);
        }
        assertThat(speed.speedMps(28_000_000, SILENCE_US).get()).isCloseTo(4.0, within(0.05));
    }

    @Test
    void aWheelThatStandsWhileTheReceiverMovesIsNotBelieved() {
        for (int i = 0; i < 100; i++) {
            speed.onFix(i * 100_000L, 5.0);
            speed.onWheel(i * 100_000L + 40_000, i * 100_000L, i < 20 ? 5.0 : 0, 0.01);
        }

        assertThat(speed.speedMps(10_000_000, SILENCE_US).get()).isCloseTo(5.0, within(0.05));
    }

    @Test
    void currentIsPressureByTheTwoPoints() {
        pressure.onCurrent(0, 0.0072);

        assertThat(pressure.pressurePa(0, SILENCE_US).get()).isCloseTo(200_000, within(1e-6));
    }

    @Test
    void aBrokenLoopIsNoPressure() {
        for (double amperes : new double[] {0, 0.0035, 0.0215}) {
            pressure.onCurrent(0, amperes);
            assertThat(pressure.pressurePa(0, SILENCE_US).unknown()).isEqualTo(Unknown.LOOP_BROKEN);
        }
        pressure.onNoCurrent(10);
        assertThat(pressure.pressurePa(10, SILENCE_US).unknown()).isEqualTo(Unknown.LOOP_BROKEN);
        assertThat(pressure.pressurePa(3_000_000, SILENCE_US).unknown()).isEqualTo(Unknown.SILENT);
    }

    @Test
    void itsClassIsItsVariance() {
        pressure.onCurrent(0, 0.0072);

        // Half a percent of 1000 kPa, uniform: 5 kPa / √3.
        assertThat(pressure.pressurePa(0, SILENCE_US).sd()).isCloseTo(2887, within(1.0));
    }

    @Test
    void aCurrentThatFreezesIsStuckAndComesBackWhenItMoves() {
        long seed = 8;
        Random random = new Random(seed);
        long us = 0;
        for (int i = 0; i < 600; i++) {
            us += 100_000;
            pressure.onCurrent(us, 1e-6 * Math.round(7200 + 13 * random.nextGaussian()));
            assertThat(pressure.pressurePa(us, SILENCE_US).isKnown())
                    .as("seed %d", seed)
                    .isTrue();
        }
        for (int i = 0; i < 10; i++) {
            us += 100_000;
            pressure.onCurrent(us, 0.007207);
        }
        assertThat(pressure.pressurePa(us, SILENCE_US).unknown()).isEqualTo(Unknown.STUCK);
        for (int i = 0; i < 40; i++) {
            us += 100_000;
            pressure.onCurrent(us, 1e-6 * Math.round(7200 + 13 * random.nextGaussian()));
        }
        assertThat(pressure.pressurePa(us, SILENCE_US).isKnown()).isTrue();
    }

    @Test
    void aPressureThatDoesNotFollowTheFlowIsStuckAndOneThatAlwaysRepeatsIsNot() {
        for (int i = 1; i <= 100; i++) {
            pressure.onCurrent(i * 100_000L, 0.0072);
            pressure.beside(Quantity.known(1e-3, 1e-14, 0), i * 100_000L - 300_000);
        }
        assertThat(pressure.pressurePa(10_000_000, SILENCE_US).isKnown()).isTrue();
        // A fifth more flow takes 44 % more pressure (orifice law).
        pressure.onCurrent(10_100_000, 0.0072);
        pressure.beside(Quantity.known(1.2e-3, 1e-14, 0), 9_800_000);

        assertThat(pressure.pressurePa(10_100_000, SILENCE_US).unknown()).isEqualTo(Unknown.STUCK);
    }
}
