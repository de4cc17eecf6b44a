package evenfall.sense;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.rig.Rig;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class BoomShapeTest {
    private static final double[] OUTLETS = {-18, -12, -6, 0, 6, 12, 18};

    private final double[] heightM = new double[OUTLETS.length];
    private final boolean[] known = new boolean[OUTLETS.length];

    private static List<Rig.Height> sensorsAt(double... rightM) {
        List<Rig.Height> sensors = new ArrayList<>();
        for (double at : rightM) {
            sensors.add(new Rig.Height("s" + sensors.size(), at, 0));
        }
        return sensors;
    }

    @Test
    void aStraightBoomComesOutStraightEvenBeyondTheOutermostSensors() {
        List<Quantity> readings = new ArrayList<>();
        for (double at : new double[] {-16, -3, 16}) {
            readings.add(Quantity.known(0.5 + 0.01 * at, 0));
        }
        new BoomShape(sensorsAt(-16, -3, 16), OUTLETS).spread(readings, heightM, known);

        for (int i = 0; i < OUTLETS.length; i++) {
            assertThat(known[i]).isTrue();
            assertThat(heightM[i]).isCloseTo(0.5 + 0.01 * OUTLETS[i], within(1e-12));
        }
    }

    @Test
    void aLostSensorTakesItsNeighbourhoodWithIt() {
        List<Quantity> readings =
                List.of(Quantity.unknown(Unknown.NO_ECHO, 5), Quantity.known(0.5, 0), Quantity.known(0.6, 0));
        new BoomShape(sensorsAt(-16, 0, 16), OUTLETS).spread(readings, heightM, known);

        assertThat(known).containsExactly(false, false, false, true, true, true, true);
    }

    @Test
    void aSingleSensorStandsForTheWholeBoom() {
        new BoomShape(sensorsAt(2), OUTLETS).spread(List.of(Quantity.known(0.4, 0)), heightM, known);

        assertThat(heightM).containsOnly(0.4);
    }

    @Test
    void withoutSensorsNothingIsKnown() {
        new BoomShape(List.of(), OUTLETS).spread(List.of(), heightM, known);

        assertThat(known).containsOnly(false);
    }
}
