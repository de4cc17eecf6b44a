package evenfall.sense;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.rig.Rig;
import org.junit.jupiter.api.Test;

class SpeedAndPressureSenseTest {
    private static final long SILENCE_US = 2_000_000;

    private final SpeedSense speed = new SpeedSense();
    private final PressureSense pressure = new PressureSense(new Rig.Pressure("hub", 0.004, 0.020, 0, 1_000_000));

    @Test
    void theNewestSpeedCounts() {
        speed.onFix(0, 5.0);
        speed.onTrack(100_000, 5.2);

        assertThat(speed.speedMps(150_000, SILENCE_US)).isEqualTo(Quantity.known(5.2, 50_000));
    }

    @Test
    void aTrackOfZeroWhileThereIsNoFixIsNoSpeed() {
        speed.onFix(0, 5.0);
        speed.onNoFix(1_000_000);
        speed.onTrack(1_000_000, 0);

        assertThat(speed.speedMps(1_100_000, SILENCE_US)).isEqualTo(Quantity.unknown(Unknown.NO_FIX, 100_000));
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
    void theMeanOverAStretchTakesWhatWasHeardInIt() {
        for (int i = 0; i <= 20; i++) {
            speed.onFix(i * 100_000L, i);
        }

        assertThat(speed.meanMps(500_000, 900_000)).isCloseTo(7, within(1e-12));
        assertThat(speed.meanMps(2_050_000, 2_090_000)).isEqualTo(20);
        assertThat(speed.meanMps(1_950_000, 9_000_000)).isEqualTo(20);
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
}
