package evenfall.sense;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.rig.Rig;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/**
 * Boom of 36 m, hinges at 2.5 m, five sensors that echo 20 times a second with 4 mm of noise. Wanted is what is 50 ms after the last echo and
 * {@link HeightSense#LAG_US} after what it says.
 */
class BoomMotionTest {
    private static final double[] PLACES = {-17, -9, 0, 9, 17};
    private static final double HINGE_M = 2.5;
    private static final double END_M = 18;
    private static final double WING_M = END_M - HINGE_M;
    private static final double AIR_C = 12;
    private static final double FLIGHT_S = 0.1;
    private static final long SILENCE_US = 1_000_000;
    private static final long ECHO_US = 50_000;
    private static final double AHEAD_S = 0.9;
    private static final double FAR_M = 1e9;

    private final List<HeightSense> senses = new ArrayList<>();
    private final BoomMotion motion;
    private final BoomShape shape;
    private final BoomOutlook outlook;
    private final HeightReadings readings = new HeightReadings(PLACES.length);
    private final List<Quantity> heightM = new ArrayList<>();
    private final List<Quantity> upMps = new ArrayList<>();
    private final List<Quantity> meetsM = new ArrayList<>();

    BoomMotionTest() {
        List<Rig.Height> sensors = new ArrayList<>();
        for (double at : PLACES) {
            sensors.add(new Rig.Height("at " + at, at, 0.1));
            senses.add(new HeightSense(0.1));
        }
        motion = new BoomMotion(sensors, senses, HINGE_M, END_M);
        shape = new BoomShape(sensors, PLACES, HINGE_M);
        outlook = new BoomOutlook(motion, shape, PLACES.length, AHEAD_S);
    }

    private void hear(long timeUs, double[] readsM) {
        for (int i = 0; i < PLACES.length; i++) {
            if (Double.isNaN(readsM[i])) {
                senses.get(i).onNoEcho(timeUs);
            } else {
                senses.get(i).onEcho(timeUs, Math.round(2e6 * (readsM[i] + 0.1) / HeightSense.soundMps(AIR_C)), AIR_C);
            }
        }
        motion.onEchoes(timeUs);
    }

    private void askAt(long nowUs) {
        List<Quantity> alone = new ArrayList<>();
        for (HeightSense sense : senses) {
            alone.add(sense.heightM(nowUs, SILENCE_US));
        }
        HeightReadings now = new HeightReadings(PLACES.length);
        motion.now(nowUs, alone, FLIGHT_S, now);
        heightM.clear();
        upMps.clear();
        meetsM.clear();
        for (int i = 0; i < PLACES.length; i++) {
            Quantity by = alone.get(i);
            assertThat(now.known[i]).isEqualTo(by.isKnown());
            double meets = now.heightM[i] + FLIGHT_S * now.rateMps[i];
            heightM.add(by.isKnown() ? Quantity.known(now.heightM[i], now.heightVariance[i], 0) : by);
            upMps.add(by.isKnown() ? Quantity.known(now.rateMps[i], now.rateVariance[i], 0) : by);
            meetsM.add(by.isKnown() ? Quantity.known(meets, now.meetsVariance[i], 0) : by);
        }
    }

    private boolean lookAheadAt(long nowUs) {
        for (int i = 0; i < PLACES.length; i++) {
            senses.get(i).read(nowUs, SILENCE_US, readings, i);
        }
        shape.spread(readings, OutletHeights.of(PLACES.length));
        return outlook.look(nowUs);
    }

    /** A beam held at its root: {@code b = B sin(2πft)} at its tip, by the square of the distance from the hinge elsewhere. */
    @Test
    void aWingThatSwingsIsToldFromGroundThatOnlyLooksLikeIt() {
        Random noise = new Random(5);
        DoubleUnaryOperator tipM = t -> 0.04 * StrictMath.sin(2 * Math.PI * 1.2 * t);
        DoubleUnaryOperator tipMps = t -> 0.04 * 2 * Math.PI * 1.2 * StrictMath.cos(2 * Math.PI * 1.2 * t);
        double off = 0;
        double true2 = 0;
        for (int k = 0; k < 1200; k++) {
            long us = k * ECHO_US;
            double[] reads = new double[PLACES.length];
            for (int i = 0; i < PLACES.length; i++) {
                double share = PLACES[i] < 0 ? Math.max(0, -PLACES[i] - HINGE_M) / WING_M : 0;
                reads[i] = 0.5
                        + share * share * tipM.applyAsDouble(us * 1e-6 - 1e-6 * HeightSense.LAG_US)
                        + 0.004 * noise.nextGaussian();
            }
            hear(us, reads);
            askAt(us + ECHO_US);
            if (k > 200) {
                double share = (17 - HINGE_M) / WING_M;
                double mps = share * share * tipMps.applyAsDouble((us + ECHO_US) * 1e-6);
                off += (upMps.get(0).get() - mps) * (upMps.get(0).get() - mps);
                true2 += mps * mps;
                assertThat(upMps.get(2).get()).isCloseTo(0, within(0.12));
            }
        }
        // Ground that walks at random has no speed to find; a swing is found but for an eighth of its energy.
        assertThat(off).isLessThan(0.125 * true2);
    }

    /**
     * The model of the class comment, gone through in steps of a millisecond by the plainest method (L. Euler, G. Maruyama): what is said
     * errs by as much as it says.
     */
    @Test
    void itErrsByAsMuchAsItSays() {
        Random random = new Random(11);
        double dt = 1e-3;
        double times = 0.25;
        double z = 0;
        double zMps = 0;
        double roll = 0;
        double rollRadps = 0;
        double[] bend = new double[2];
        double[] bendMps = new double[2];
        double[] ground = new double[PLACES.length];
        double[] slopeMps = new double[PLACES.length];
        double climb = 0;
        double climbMps = 0;
        double wc = 2 * Math.PI * 0.2;
        double[][] sums = new double[5][2];
        Map<Integer, List<Foretold>> foretold = new HashMap<>();
        double wz = 2 * Math.PI * 1.7;
        double wr = 2 * Math.PI * 0.5;
        double wb = 2 * Math.PI * 1.2;
        double gz = (1.0 / 3 - 0.5 / 4) / (1.0 / 5 - 0.5 / 6);
        double gr = (1.0 / 4 - 0.5 / 5) / (1.0 / 5 - 0.5 / 6) * WING_M;
        double[] before = new double[PLACES.length];
        for (int ms = 0; ms < 300_000; ms++) {
            double shakes = Math.sqrt(times * 4 * 0.4 * wz * dt) * 0.15 * random.nextGaussian();
            double turns = Math.sqrt(times * 4 * 0.6 * wr * dt) * 0.008 * random.nextGaussian();
            double byZ = (-wz * wz * z - 2 * 0.4 * wz * zMps) * dt + shakes;
            double byRoll = (-wr * wr * roll - 2 * 0.6 * wr * rollRadps) * dt + turns;
            double byClimb = (-wc * wc * climb - 2 * 0.7 * wc * climbMps) * dt
                    + Math.sqrt(4 * 0.7 * wc * dt) * 0.1 * random.nextGaussian();
            for (int side = 0; side < 2; side++) {
                double outwards = side == 0 ? -1 : 1;
                bendMps[side] += (-wb * wb * bend[side] - 2 * 0.12 * wb * bendMps[side]) * dt
                        + Math.sqrt(times * 4 * 0.12 * wb * dt) * 0.15 * random.nextGaussian()
                        - gz * (byZ + byClimb)
                        - outwards * (gz * HINGE_M + gr) * byRoll;
                bend[side] += bendMps[side] * dt;
            }
            zMps += byZ;
            rollRadps += byRoll;
            z += zMps * dt;
            roll += rollRadps * dt;
            climbMps += byClimb;
            climb += climbMps * dt;
            double[] height = new double[PLACES.length];
            double[] speed = new double[PLACES.length];
            for (int i = 0; i < PLACES.length; i++) {
                slopeMps[i] += -slopeMps[i] * dt + Math.sqrt(2 * dt) * 0.1 * random.nextGaussian();
                ground[i] += slopeMps[i] * dt + Math.sqrt(times * 1e-3 * dt) * random.nextGaussian();
                double share = Math.max(0, Math.abs(PLACES[i]) - HINGE_M) / WING_M;
                int side = PLACES[i] < 0 ? 0 : 1;
                // The centre rides with the machine over the very ground that it sees.
                double seesM = share > 0 ? climb : 0;
                height[i] = 1.5 + ground[i] + seesM + z + roll * PLACES[i] + share * share * bend[side];
                speed[i] = climbMps + zMps + rollRadps * PLACES[i] + share * share * bendMps[side];
            }
            for (Foretold said : foretold.getOrDefault(ms, List.of())) {
                add(sums[said.sum], said.height, height[said.sensor]);
            }
            foretold.remove(ms);
            // A reading says what was 20 ms ago; it was kept then.
            if (ms % 50 == 30) {
                before = height;
            }
            if (ms % 50 == 0 && ms > 0) {
                if (ms > 60_000) {
                    askAt(1000L * ms);
                    for (int i = 0; i < PLACES.length; i++) {
                        add(sums[0], heightM.get(i), height[i]);
                        add(sums[1], upMps.get(i), speed[i]);
                        add(sums[2], meetsM.get(i), height[i] + 0.1 * speed[i]);
                    }
                    assertThat(lookAheadAt(1000L * ms)).isTrue();
                    for (int i = 0; i < PLACES.length; i++) {
                        // Under a floor far below the widest forecast is the likeliest, the last one; under one far
                        // above, the first.
                        for (int last = 0; last < 2; last++) {
                            assertThat(outlook.likeliestUnder(last == 1 ? -FAR_M : FAR_M, 2 * FAR_M, i, i))
                                    .isTrue();
                            int then = ms + (int) Math.round(1000 * outlook.inS());
                            foretold.computeIfAbsent(then, t -> new ArrayList<>())
                                    .add(new Foretold(
                                            3 + last, i, Quantity.known(outlook.heightM(), outlook.varianceM2(), 0)));
                        }
                    }
                }
                double[] reads = new double[PLACES.length];
                for (int i = 0; i < PLACES.length; i++) {
                    reads[i] = Math.max(0.05, before[i]) + 0.004 * random.nextGaussian();
                }
                hear(1000L * ms, reads);
            }
            for (int i = 0; i < PLACES.length; i++) {
                // The ground stays where a boom would be kept over it.
                ground[i] *= 1 - 0.1 * dt;
            }
        }
        for (double[] sum : sums) {
            assertThat(Math.sqrt(sum[0] / sum[1])).isBetween(0.8, 1.25);
        }
    }

    private record Foretold(int sum, int sensor, Quantity height) {}

    private static void add(double[] sum, Quantity said, double really) {
        sum[0] += (said.get() - really) * (said.get() - really);
        sum[1] += said.variance();
    }

    /**
     * Terraces at a skew: the machine climbs them while the wings' ground stays as it is. All wings rise over their ground together, and the
     * centre, which rides over the ground that it sees, does not. The first one teaches that here are slopes.
     */
    @Test
    void aMachineThatClimbsIsToldFromGroundUnderItsWings() {
        Random noise = new Random(7);
        double found = 0;
        double real = 0;
        for (int k = 0; k < 500; k++) {
            double s = k * 0.05;
            double[] reads = new double[PLACES.length];
            for (int i = 0; i < PLACES.length; i++) {
                reads[i] = 0.6 + (PLACES[i] == 0 ? 0 : climbM(s - 0.02)) + 0.004 * noise.nextGaussian();
            }
            hear(k * ECHO_US, reads);
            askAt((k + 1) * ECHO_US);
            if (s > 13) {
                double trueMps = (climbM(s + 0.06) - climbM(s + 0.04)) / 0.02;
                for (int i = 0; i < PLACES.length; i++) {
                    found += trueMps * upMps.get(i).get();
                    real += trueMps * trueMps;
                    assertThat(heightM.get(i).get())
                            .isCloseTo(0.6 + (PLACES[i] == 0 ? 0 : climbM(s + 0.05)), within(0.03));
                }
            }
        }
        assertThat(found / real).isBetween(0.5, 1.1);
    }

    /** From 10 s on up by 0.25 m in 1.5 s, down again, and so on. */
    private static double climbM(double s) {
        double since = Math.max(0, s - 10) % 3;
        return 0.25 / 1.5 * Math.min(since, 3 - since);
    }

    /** Ground that slopes for seconds under one tip is followed without much lag, and is no swing of the boom. */
    @Test
    void groundThatSlopesUnderOneTipIsFollowed() {
        Random noise = new Random(8);
        double off2 = 0;
        double up2 = 0;
        int n = 0;
        for (int k = 0; k < 500; k++) {
            double s = k * 0.05;
            double[] reads = new double[PLACES.length];
            for (int i = 0; i < PLACES.length; i++) {
                reads[i] = 0.6 + (i == 0 ? climbM(s - 0.02) : 0) + 0.004 * noise.nextGaussian();
            }
            hear(k * ECHO_US, reads);
            askAt((k + 1) * ECHO_US);
            if (s > 13) {
                double off = heightM.get(0).get() - 0.6 - climbM(s + 0.05);
                off2 += off * off;
                up2 += upMps.get(0).get() * upMps.get(0).get();
                n++;
            }
        }
        assertThat(Math.sqrt(off2 / n)).isLessThan(0.015);
        // Of the 0.17 m/s less than half is taken for the boom's.
        assertThat(Math.sqrt(up2 / n)).isLessThan(0.08);
    }

    @Test
    void aSensorThatIsNotHeardIsUnknownAndTheOthersGoOn() {
        for (int k = 0; k < 200; k++) {
            hear(k * ECHO_US, new double[] {0.5, 0.5, 0.5, k < 100 ? 0.5 : Double.NaN, 0.5});
        }
        askAt(200 * ECHO_US);
        assertThat(heightM.get(3).unknown()).isEqualTo(Unknown.NO_ECHO);
        assertThat(upMps.get(3).unknown()).isEqualTo(Unknown.NO_ECHO);
        assertThat(meetsM.get(3).unknown()).isEqualTo(Unknown.NO_ECHO);
        for (int i : new int[] {0, 1, 2, 4}) {
            assertThat(heightM.get(i).get()).isCloseTo(0.5, within(2e-3));
        }
    }

    /** After a gap in the sentences one sensor is not heard at once: it stays where it was, and its next echo moves nobody else. */
    @Test
    void aSensorThatIsLateAfterAGapStaysWhereItWas() {
        double[] level = {0.5, 0.5, 0.5, 0.5, 0.5};
        long us = 0;
        for (int k = 0; k < 100; k++) {
            us += ECHO_US;
            hear(us, level);
        }
        us += 600_000;
        hear(us, new double[] {Double.NaN, 0.5, 0.5, 0.5, 0.5});
        askAt(us);
        assertThat(heightM.get(0).get()).isCloseTo(0.5, within(0.02));
        us += ECHO_US;
        hear(us, level);
        askAt(us);
        for (int i = 0; i < PLACES.length; i++) {
            assertThat(heightM.get(i).get()).as("at %s m", PLACES[i]).isCloseTo(0.5, within(0.02));
        }
    }

    /** It jumps about by half a metre, and has been found out; the boom does not follow it, and nor do the others' heights. */
    @Test
    void aSensorThatIsNotBelievedDoesNotMoveTheBoom() {
        long us = 0;
        senses.get(4).doubt(Unknown.SCATTERED);
        for (int k = 0; k < 100; k++) {
            us += ECHO_US;
            double leaps = 0.5 + 0.2 * Math.sin(0.9 * k);
            hear(us, new double[] {0.5, 0.5, 0.5, 0.5, leaps});
            askAt(us);
            for (int i = 0; i < 4; i++) {
                assertThat(upMps.get(i).get()).as("after %d echoes", k).isCloseTo(0, within(0.01));
            }
        }
        assertThat(heightM.get(4).isKnown()).isFalse();
        senses.get(4).doubt(Unknown.NOT_YET);
        us += ECHO_US;
        hear(us, new double[] {0.5, 0.5, 0.5, 0.5, 0.7});
        askAt(us);
        assertThat(heightM.get(4).get()).isCloseTo(0.7, within(0.1));
        assertThat(upMps.get(3).get()).isCloseTo(0, within(0.01));
    }

    @Test
    void groundThatDropsAtOnceIsFollowedAndIsNoSwing() {
        for (int k = 0; k < 200; k++) {
            double far = k < 100 ? 0.5 : 0.9;
            hear(k * ECHO_US, new double[] {far, 0.5, 0.5, 0.5, 0.5});
        }
        askAt(200 * ECHO_US);
        assertThat(heightM.get(0).get()).isCloseTo(0.9, within(0.02));
        assertThat(upMps.get(0).get()).isCloseTo(0, within(0.05));
    }

    /** A wing that swings by 10 cm at 1.2 Hz falls by 0.75 m/s through its set height: in a straight line it would strike each time. */
    @Test
    void aSwingIsForetoldToTurn() {
        Random noise = new Random(17);
        double lowest = 1;
        double lowestByLine = 1;
        for (int k = 0; k < 1200; k++) {
            double s = 1e-6 * k * ECHO_US - 1e-6 * HeightSense.LAG_US;
            double[] reads = new double[PLACES.length];
            for (int i = 0; i < PLACES.length; i++) {
                double share = PLACES[i] < 0 ? Math.max(0, -PLACES[i] - HINGE_M) / WING_M : 0;
                double swingM = 0.10 * StrictMath.sin(2 * Math.PI * 1.2 * s);
                reads[i] = 0.5 + share * share * swingM + 0.004 * noise.nextGaussian();
            }
            hear(k * ECHO_US, reads);
            long nowUs = k * ECHO_US + 25_000;
            assertThat(lookAheadAt(nowUs)).isTrue();
            if (k > 200) {
                outlook.likeliestUnder(0.15, 1, 0, 0);
                lowest = Math.min(lowest, outlook.heightM());
                double byLineM = senses.get(0).heightM(nowUs, SILENCE_US).get()
                        + AHEAD_S * senses.get(0).rateMps(nowUs, SILENCE_US).get();
                lowestByLine = Math.min(lowestByLine, byLineM);
                assertThat(motion.isFalling(0)).isFalse();
            }
        }
        assertThat(lowestByLine).isLessThan(0.05);
        assertThat(lowest).isGreaterThan(0.35);
    }

    @Test
    void nothingIsForetoldBeforeTheFirstReadingNorLongAfterTheLast() {
        assertThat(outlook.look(0)).isFalse();
        double[] reads = {0.5, 0.5, 0.5, 0.5, 0.5};
        for (int k = 0; k < 100; k++) {
            hear(k * ECHO_US, reads);
        }
        assertThat(lookAheadAt(100 * ECHO_US)).isTrue();
        assertThat(lookAheadAt(100 * ECHO_US + 1_000_000)).isFalse();
    }

    /** A tip that goes down while all else stands still: no boom does so. One edge is none, whoever passes it. */
    @Test
    void aFallThatIsNoMotionOfTheBoomIsToldWithinAQuarterOfASecond() {
        Random noise = new Random(19);
        double[] reads = new double[PLACES.length];
        for (int k = 0; k < 72_000; k++) {
            int since = k % 1200 - 600;
            boolean edge = k % 2400 >= 1200;
            for (int i = 0; i < PLACES.length; i++) {
                reads[i] = 0.6 + 0.004 * noise.nextGaussian();
            }
            reads[0] -= since < 0 || since > 11 ? 0 : edge ? 0.06 : 0.05 * 0.7 * since;
            hear(k * ECHO_US, reads);
            if (since >= 6 && since <= 10 && !edge) {
                assertThat(motion.isFalling(0)).as("reading %d", k).isTrue();
            }
            if (since < 0 || edge) {
                assertThat(motion.isFalling(0)).as("reading %d", k).isFalse();
            }
            assertThat(motion.isFalling(4)).as("reading %d", k).isFalse();
        }
    }
}
