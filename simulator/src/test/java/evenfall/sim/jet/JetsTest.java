package evenfall.sim.jet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.outlet.OutletCatalogue;
import evenfall.outlet.OutletType;
import evenfall.outlet.Stream;
import evenfall.sim.chance.Chance;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class JetsTest {
    private static final double WATER = 1.0;

    /**
     * Horizontal throw, by {@code x = u √(2h/g)}: a drop of 0.5 m at 5 m/s takes 0.3193 s and reaches 1.5966 m, 1 m takes 0.4516 s
     * and reaches 2.258 m. Computed by hand from the law of free fall.
     */
    @Test
    void aLevelStreamFallsAsGalileoSays() {
        Jets jets = jets(new Stream(1, 0, 0, StrictMath.PI / 2, 5.0));

        jets.land(200_000, 0.5, 0, 0);
        assertThat(jets.flightS(0)).isCloseTo(0.3193, within(5e-5));
        assertThat(jets.backM(0)).isCloseTo(1.5966, within(5e-5));
        assertThat(jets.rightM(0)).isZero();

        jets.land(200_000, 1.0, 0, 0);
        assertThat(jets.backM(0)).isCloseTo(2.258, within(5e-4));
    }

    @Test
    void theFlightEndsExactlyOnTheGround() {
        long seed = 4711;
        Chance chance = Chance.stream(seed, "flight");
        for (int i = 0; i < 2000; i++) {
            double splay = 1.4 * (2 * chance.nextDouble() - 1);
            double tilt = 2.5 * chance.nextDouble();
            double roll = 0.2 * (2 * chance.nextDouble() - 1);
            double vertical = 2 * (2 * chance.nextDouble() - 1);
            double height = 0.01 + 2 * chance.nextDouble();
            Jets jets = jets(new Stream(1, 0, splay, tilt, 5.0));
            jets.land(150_000, height, roll, vertical);
            double u = 5.0 * Math.sqrt(150.0 / 200.0);
            double t = jets.flightS(0);
            double down = u * (Math.cos(splay) * Math.cos(tilt) * Math.cos(roll) - Math.sin(splay) * Math.sin(roll))
                    - vertical;
            assertThat(down * t + 0.5 * 9.80665 * t * t)
                    .as("seed %d, case %d", seed, i)
                    .isCloseTo(height, within(1e-9));
            assertThat(t).isPositive();
        }
    }

    @Test
    void anOutletInTheGroundLandsWhereItIs() {
        Jets jets = jets(new Stream(0.5, -0.2, -0.3, 0, 5.0), new Stream(0.5, 0.2, 0.3, 1, 5.0));
        jets.land(200_000, -0.05, 0, 0.4);
        assertThat(jets.rightM(0)).isEqualTo(-0.2);
        assertThat(jets.rightM(1)).isEqualTo(0.2);
        assertThat(jets.backM(1)).isZero();
        assertThat(jets.flightS(1)).isZero();
    }

    @Test
    void aTurnedOutletThrowsToTheSideThatWentUp() {
        // Right side up turns "down" towards the right: the stream leaves along the outlet's own axis.
        Jets jets = jets(new Stream(1, 0, 0, 0, 5.0));
        jets.land(200_000, 0.5, 0.1, 0);
        double u = 5.0;
        double t = jets.flightS(0);
        assertThat(jets.rightM(0)).isCloseTo(u * Math.sin(0.1) * t, within(1e-12));
        assertThat(jets.rightM(0)).isPositive();
    }

    @Test
    void theMirroredOutletLandsInTheMirror() {
        for (String id : OutletCatalogue.ids()) {
            OutletType type = OutletCatalogue.builtIn(id).fitted(0.508);
            Jets jets = new Jets(type, 1.28);
            int n = jets.streams();
            jets.land(180_000, 0.37, 0.06, 0.3);
            double[] right = new double[n];
            double[] back = new double[n];
            for (int k = 0; k < n; k++) {
                right[k] = jets.rightM(k);
                back[k] = jets.backM(k);
            }
            jets.land(180_000, 0.37, -0.06, 0.3);
            for (int k = 0; k < n; k++) {
                assertThat(jets.rightM(n - 1 - k)).as(id).isCloseTo(-right[k], within(1e-12));
                assertThat(jets.backM(n - 1 - k)).as(id).isCloseTo(back[k], within(1e-12));
            }
        }
    }

    @Test
    void aBarsLinesDoNotDependOnHeight() {
        Jets jets = new Jets(OutletCatalogue.builtIn("streamer-bar").fitted(0.508), 1.28);
        jets.land(200_000, 0.05, 0, 0);
        double[] low = new double[jets.streams()];
        for (int k = 0; k < low.length; k++) {
            low[k] = jets.rightM(k);
        }
        jets.land(120_000, 1.1, 0, 0.7);
        for (int k = 0; k < low.length; k++) {
            assertThat(jets.rightM(k)).isEqualTo(low[k]);
        }
    }

    private static Jets jets(Stream... streams) {
        return new Jets(
                new OutletType("t", "t", 200_000, 1e-5, 100_000, 400_000, new ArrayList<>(List.of(streams))), WATER);
    }
}
