package evenfall.sense;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Wings that roll and bend at random, read 20 times a second with 4 mm of scatter; invented. */
class CrossedLeadsTest {
    private static final double[] FIVE_M = {-17, -9, 0, 9, 17};
    private static final double[] SEVEN_M = {-17, -12, -6, 0, 6, 12, 17};

    /** Takes what the wings do to what the sensors read. */
    private interface Wiring {
        void change(double[] readsM);
    }

    private static final Wiring RIGHT = readsM -> {};

    /** Each wing's tip changes by a normal number each second, 0.06 m, and each place on it in proportion, and by one of its own, 0.01 m. */
    private static CrossedLeads after(int seconds, long seed, double[] rightM, Wiring wiring) {
        CrossedLeads leads = new CrossedLeads(rightM, 2);
        Random random = new Random(seed);
        double[] heightM = new double[rightM.length];
        for (int step = 0; step < seconds; step++) {
            double leftM = 0.06 * random.nextGaussian();
            double rightWingM = 0.06 * random.nextGaussian();
            for (int i = 0; i < heightM.length; i++) {
                double wingM = rightM[i] < 0 ? leftM : rightWingM;
                // Held to its place, or it would wander off.
                heightM[i] = 0.5 * heightM[i] + wingM * Math.abs(rightM[i]) / 17 + 0.01 * random.nextGaussian();
            }
            for (int reading = 0; reading < 20; reading++) {
                double[] readsM = heightM.clone();
                for (int i = 0; i < readsM.length; i++) {
                    readsM[i] += 0.5 + 0.004 * random.nextGaussian();
                }
                wiring.change(readsM);
                leads.onReadings(step * 1_000_000L + reading * 50_000L, readsM);
            }
        }
        return leads;
    }

    private static Wiring exchanged(int one, int other) {
        return readsM -> {
            double held = readsM[one];
            readsM[one] = readsM[other];
            readsM[other] = held;
        };
    }

    private static boolean[] crossed(CrossedLeads leads, int sensors) {
        boolean[] crossed = new boolean[sensors];
        for (int i = 0; i < sensors; i++) {
            crossed[i] = leads.isCrossed(i);
        }
        return crossed;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void leadsThatAreRightAreLeftAlone(long seed) {
        assertThat(crossed(after(3600, seed, FIVE_M, RIGHT), 5)).containsOnly(false);
        assertThat(crossed(after(3600, seed, SEVEN_M, RIGHT), 7)).containsOnly(false);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void ofTwoPairsBothAreDoubtedWhicheverIsChangedOver(long seed) {
        assertThat(crossed(after(180, seed, FIVE_M, exchanged(0, 4)), 5))
                .containsExactly(true, true, false, true, true);
        assertThat(crossed(after(180, seed, FIVE_M, exchanged(1, 3)), 5))
                .containsExactly(true, true, false, true, true);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void ofThreePairsTheOneThatDisagreesIsNamed(long seed) {
        assertThat(crossed(after(300, seed, SEVEN_M, exchanged(1, 5)), 7))
                .containsExactly(false, true, false, false, false, true, false);
    }

    /** Its mirror image is a boom: to say that nothing can be told is the most that can be said. */
    @Test
    void allChangedOverCannotBeTold() {
        Wiring mirrored = readsM -> {
            for (int i = 0; i < readsM.length / 2; i++) {
                exchanged(i, readsM.length - 1 - i).change(readsM);
            }
        };
        assertThat(crossed(after(600, 1, FIVE_M, mirrored), 5)).containsOnly(false);
    }

    @Test
    void onePairAloneCannotBeTold() {
        assertThat(crossed(after(600, 1, new double[] {-17, 0, 17}, exchanged(0, 2)), 3))
                .containsOnly(false);
    }

    /** Wald's bound: readings that mean nothing make a false doubt at most once in 100 hours; here are 40. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void readingsThatMeanNothingAreNotTakenForIt(long seed) {
        CrossedLeads leads = new CrossedLeads(FIVE_M, 2);
        Random random = new Random(seed);
        for (int step = 0; step < 36_000; step++) {
            double[] readsM = random.doubles(5, 0.2, 0.8).toArray();
            leads.onReadings(step * 1_000_000L, readsM);
            assertThat(leads.isCrossed(0)).as("second %d", step).isFalse();
        }
    }

    @Test
    void aSensorThatIsNotHeardSaysNothing() {
        Wiring deaf = readsM -> {
            exchanged(0, 4).change(readsM);
            readsM[1] = Double.NaN;
        };
        assertThat(crossed(after(600, 1, FIVE_M, deaf), 5)).containsOnly(false);
    }
}
