package evenfall.sense;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Five sensors over ground whose heights they see with 4 mm of scatter, 20 times a second; invented. */
class HeightDoubtsTest {
    private static final double AIR_C = 10;
    private static final int SENSORS = 5;

    private final List<HeightSense> senses = new ArrayList<>();
    private final HeightDoubts doubts;
    private final Random random = new Random(12);
    private long timeUs;

    HeightDoubtsTest() {
        for (int i = 0; i < SENSORS; i++) {
            senses.add(new HeightSense(0.10));
        }
        doubts = new HeightDoubts(senses, new double[] {-17, -9, 0, 9, 17}, 2);
    }

    private interface Reading {
        long echoUs(int sensor, double saysM);
    }

    private static long echo(double distanceM) {
        return Math.round(2e6 * distanceM / HeightSense.soundMps(AIR_C));
    }

    private void run(double seconds, double motionM, Reading reading) {
        for (int step = 0; step < seconds * 20; step++) {
            timeUs += 50_000;
            for (int i = 0; i < SENSORS; i++) {
                double trueM = 0.6 + motionM * Math.sin(2 * Math.PI * (0.7 + 0.1 * i) * timeUs * 1e-6);
                long us = reading.echoUs(i, trueM + 0.004 * random.nextGaussian());
                doubts.onEcho(i, us, AIR_C);
                senses.get(i).onEcho(timeUs, us, AIR_C);
            }
            doubts.onAllHeard(timeUs);
        }
    }

    private List<Unknown> reasons() {
        List<Unknown> reasons = new ArrayList<>();
        for (HeightSense sense : senses) {
            reasons.add(sense.heightM(timeUs, 1_000_000).unknown());
        }
        return reasons;
    }

    @Test
    void healthySensorsAreBelievedForAnHour() {
        for (int minute = 0; minute < 60; minute++) {
            run(60, minute % 2 == 0 ? 0.10 : 0, (i, saysM) -> echo(saysM));
            assertThat(reasons()).as("minute %d, seed 12", minute).containsOnlyNulls();
        }
    }

    @Test
    void aSensorThatRepeatsItselfIsStuckWithinHalfASecond() {
        run(30, 0.05, (i, saysM) -> echo(saysM));
        run(0.5, 0.05, (i, saysM) -> i == 1 ? 1234 : echo(saysM));

        assertThat(reasons()).containsExactly(null, Unknown.STUCK, null, null, null);
        run(2, 0.05, (i, saysM) -> echo(saysM));
        assertThat(reasons()).containsOnlyNulls();
    }

    @Test
    void sensorsThatAllStandStillAreNotStuck() {
        run(30, 0.05, (i, saysM) -> echo(saysM));
        run(30, 0, (i, saysM) -> echo(0.6));

        assertThat(reasons()).containsOnlyNulls();
    }

    @Test
    void aLooseBracketAndDoubleEchoesAreScatteredWithinTwoSeconds() {
        run(30, 0.05, (i, saysM) -> echo(saysM));
        run(
                2,
                0.05,
                (i, saysM) -> echo(
                        i == 0
                                ? saysM + 0.15 * random.nextGaussian()
                                : i == 4 && random.nextBoolean() ? 2 * saysM : saysM));

        assertThat(reasons()).containsExactly(Unknown.SCATTERED, null, null, null, Unknown.SCATTERED);
        run(5, 0.05, (i, saysM) -> echo(saysM));
        assertThat(reasons()).containsOnlyNulls();
    }

    @Test
    void anEdgeUnderOneSensorIsGround() {
        run(30, 0.05, (i, saysM) -> echo(saysM));
        run(0.2, 0.05, (i, saysM) -> echo(i == 2 ? saysM + 0.4 : saysM));
        run(0.4, 0.05, (i, saysM) -> echo(saysM));

        assertThat(reasons()).containsOnlyNulls();
    }

    /** By the bound no more than one look in 400 at a healthy sensor; one in foam after three readings, long before it is called stuck. */
    @Test
    void aSensorInFoamIsSuspectAtOnceAndAHealthyOneHardlyEver() {
        run(30, 0.05, (i, saysM) -> echo(saysM));
        int suspect = 0;
        for (int k = 0; k < 20_000; k++) {
            run(0.05, 0.05, (i, saysM) -> echo(saysM));
            suspect += doubts.isSuspect(1) ? 1 : 0;
        }
        assertThat(suspect).isBetween(1, 20_000 / 400);
        run(0.15, 0.05, (i, saysM) -> i == 1 ? 1234 : echo(saysM));
        assertThat(doubts.isSuspect(1)).isTrue();
        assertThat(doubts.isSuspect(0)).isFalse();
        assertThat(reasons()).containsOnlyNulls();
    }
}
