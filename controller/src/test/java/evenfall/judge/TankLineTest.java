package evenfall.judge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** A paper tank of 4 m³ that loses 2.75 L/s and sloshes. */
class TankLineTest {
    private static final double FLOW_M3PS = 2.75e-3;

    /** Slope less truth over its own standard deviation, root of the mean square of many tanks. */
    private static double honesty(double swayM3, double swayS, int seconds) {
        double squares = 0;
        int tanks = 200;
        int forgot = 0;
        for (int seed = 0; seed < tanks; seed++) {
            Random random = new Random(seed);
            TankLine line = new TankLine(0.040);
            double sway = 0;
            double keep = Math.exp(-0.2 / swayS);
            for (int look = 0; look < 5 * seconds; look++) {
                double gone = FLOW_M3PS * 0.2 * look;
                sway = keep * sway + Math.sqrt(1 - keep * keep) * swayM3 * random.nextGaussian();
                line.take(gone, 3.6 - gone + sway, 0.2);
            }
            if (!line.isKnown()) {
                // A push that looked like filling: begun anew, and too little since.
                forgot++;
                continue;
            }
            double z = (line.beta() - 1) / line.betaSd();
            assertThat(Math.abs(z)).as("seed %s", seed).isLessThan(5);
            squares += z * z;
        }
        assertThat(forgot).isLessThan(tanks / 20);
        return Math.sqrt(squares / (tanks - forgot));
    }

    @Test
    void itsVarianceIsHonestWhateverPushesTheLiquid() {
        // What the rig states is more than there is: the slope is better than it says.
        assertThat(honesty(0.030, 0.3, 600)).isLessThan(1);
        // A slope of the field that lasts half a minute and moves the level by 30 L is not stated, and seen in the
        // residuals.
        assertThat(honesty(0.030, 30, 600)).isBetween(0.6, 1.6);
        assertThat(honesty(0.030, 30, 1200)).isBetween(0.6, 1.6);
        assertThat(honesty(0.060, 10, 900)).isBetween(0.6, 1.5);
    }

    @Test
    void itsMemoryIsBoundedAndWhatItKeepsIsTheLastThreeQuartersOfAnHour() {
        TankLine line = new TankLine(0.040);
        double metered = 0;
        for (int look = 0; look < 5 * 4 * 3600; look++) {
            metered += 0.2e-3;
            // The meter's litre becomes worth less after three hours.
            line.take(metered, 20 - (look < 5 * 3 * 3600 ? metered : 10.8 + 0.9 * (metered - 10.8)), 0.2);
        }

        assertThat(line.beta()).isCloseTo(0.9, org.assertj.core.api.Assertions.within(1e-9));
        assertThat(line.meteredM3()).isLessThan(3.0);
    }

    @Test
    void withoutFlowItKnowsNothing() {
        TankLine line = new TankLine(0.040);
        for (int look = 0; look < 5 * 600; look++) {
            line.take(1, 3, 0.2);
        }

        assertThat(line.isKnown()).isFalse();
    }
}
