package evenfall.sim.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.sim.chance.Chance;
import java.util.List;
import org.junit.jupiter.api.Test;

class TankGaugeTest {
    private static final List<TankGauge.Mark> RISING =
            List.of(new TankGauge.Mark(100, 0), new TankGauge.Mark(1100, 1), new TankGauge.Mark(5100, 3));

    /** An echo from the lid: the fuller, the shorter. */
    private static final List<TankGauge.Mark> FALLING =
            List.of(new TankGauge.Mark(300, 3), new TankGauge.Mark(5300, 0.5), new TankGauge.Mark(5800, 0));

    private static TankGauge gauge(List<TankGauge.Mark> table, double factor, double sloshM3) {
        return new TankGauge(
                new TankGauge.Spec(table, 2.5, factor, sloshM3, 0.5, 0.05), Chance.stream(7, "tank of the test"));
    }

    @Test
    void whatIsGoneIsReadOffTheTableByHand() {
        assertThat(gauge(RISING, 1, 0).counts(0)).isEqualTo(4100);
        assertThat(gauge(RISING, 1, 0).counts(2)).isEqualTo(600);
        assertThat(gauge(RISING, 1.1, 0).counts(2)).isEqualTo(650);
        assertThat(gauge(RISING, 1, 0).counts(4)).isEqualTo(100);
        assertThat(gauge(FALLING, 1, 0).counts(1)).isEqualTo(3300);
        assertThat(gauge(FALLING, 1, 0).counts(2.25)).isEqualTo(5550);
    }

    @Test
    void sloshingSwingsAtItsOwnFrequencyAndHasTheScatterThatIsAsked() {
        TankGauge gauge = gauge(RISING, 1, 0.04);
        int n = 200_000;
        double[] off = new double[n];
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < n; i++) {
            off[i] = (gauge.counts(0) - 4100) / 2000.0;
            sum += off[i];
            squares += off[i] * off[i];
        }
        double half = 0;
        for (int i = 5; i < n; i++) {
            half += off[i] * off[i - 5];
        }

        assertThat(sum / n).isCloseTo(0, within(0.001));
        assertThat(Math.sqrt(squares / n)).isCloseTo(0.04, within(0.002));
        // A second is half a swing: the liquid is on the other side, a little less high.
        assertThat(half / squares).isBetween(-0.95, -0.7);
    }
}
