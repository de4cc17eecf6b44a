package evenfall.sense;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.rig.Rig;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class BoomShapeTest {
    private static final double[] OUTLETS = {-18, -12, -6, 0, 6, 12, 18};

    private static final double HINGE_M = 6;
    private static final double SENSOR_VARIANCE = 2.5e-5;

    private final OutletHeights spread = OutletHeights.of(OUTLETS.length);
    private final double[] heightM = spread.heightM();
    private final double[] variance = spread.variance();
    private final boolean[] known = spread.known();

    private static List<Rig.Height> sensorsAt(double... rightM) {
        List<Rig.Height> sensors = new ArrayList<>();
        for (double at : rightM) {
            sensors.add(new Rig.Height("s" + sensors.size(), at, 0));
        }
        return sensors;
    }

    private static Quantity reading(double heightM) {
        return Quantity.known(heightM, SENSOR_VARIANCE, 0);
    }

    private void spread(List<Rig.Height> sensors, List<Quantity> readings) {
        new BoomShape(sensors, OUTLETS, HINGE_M).spread(readings, spread);
    }

    /** With few sensors a slope cannot be told from wings that are tilted against each other, and is taken for a little of both. */
    @Test
    void aStraightBoomComesOutStraightEvenBeyondTheOutermostSensors() {
        for (double[] places :
                new double[][] {{-16, 16}, {-16, -3, 16}, {-17, -9, 0, 9, 17}, {-17, -12, -7, 0, 7, 12, 17}}) {
            List<Quantity> readings = new ArrayList<>();
            for (double at : places) {
                readings.add(reading(0.5 + 0.01 * at));
            }
            spread(sensorsAt(places), readings);
            for (int i = 0; i < OUTLETS.length; i++) {
                assertThat(heightM[i])
                        .isCloseTo(known[i] ? 0.5 + 0.01 * OUTLETS[i] : 0, within(places.length > 4 ? 2e-3 : 0.02));
            }
        }
    }

    @Test
    void aWingWithTwoSensorsShowsItsBendBetweenThem() {
        // The left wing bends up by 0.2 m at 18 m, as the square of the distance from the hinge; all else is level.
        List<Quantity> readings = new ArrayList<>();
        double[] places = {-17, -11, 0, 11, 17};
        for (double at : places) {
            readings.add(reading(0.5 + (at < -HINGE_M ? 0.2 * Math.pow((-at - HINGE_M) / 12, 2) : 0)));
        }
        spread(sensorsAt(places), readings);

        assertThat(heightM[1]).isCloseTo(0.55, within(0.006));
        assertThat(heightM[0]).isCloseTo(0.70, within(0.02));
        assertThat(heightM[2]).isCloseTo(0.50, within(0.01));
        assertThat(heightM[6]).isCloseTo(0.50, within(0.01));
    }

    @Test
    void aLostTipIsNotKnownAndALostMiddleIsKnownLess() {
        List<Rig.Height> sensors = sensorsAt(-17, -9, 0, 9, 17);
        List<Quantity> all =
                new ArrayList<>(List.of(reading(0.5), reading(0.5), reading(0.5), reading(0.5), reading(0.5)));
        spread(sensors, all);
        assertThat(known).containsOnly(true);
        double whole = variance[1];

        all.set(0, Quantity.unknown(Unknown.NO_ECHO, 5));
        spread(sensors, all);
        assertThat(known).containsExactly(false, true, true, true, true, true, true);
        assertThat(variance[1]).isGreaterThan(2 * whole);

        all.set(0, reading(0.5));
        all.set(1, Quantity.unknown(Unknown.NO_ECHO, 5));
        spread(sensors, all);
        assertThat(known[0]).isTrue();
        assertThat(variance[1]).isGreaterThan(2 * whole);
    }

    @Test
    void theVarianceSaysHowWrongItIs() {
        // The prior itself makes boom and ground: 2000 of them, seeded. So the mean squared error over the variance is
        // 1.
        long seed = 11;
        Random random = new Random(seed);
        double[] places = {-17, -9, 0, 9, 17};
        BoomShape shape = new BoomShape(sensorsAt(places), OUTLETS, HINGE_M);
        double[] sum = new double[OUTLETS.length];
        for (int run = 0; run < 2000; run++) {
            double height = 0.5 + 0.1 * random.nextGaussian();
            double slope = 0.02 * random.nextGaussian();
            double[] tilt = {0.02 * random.nextGaussian(), 0.02 * random.nextGaussian()};
            double[] bend = {0.30 * random.nextGaussian(), 0.30 * random.nextGaussian()};
            double[][] ground = {walk(random), walk(random)};
            List<Quantity> readings = new ArrayList<>();
            for (double at : places) {
                readings.add(reading(truth(at, height, slope, tilt, bend, ground)
                        + Math.sqrt(SENSOR_VARIANCE) * random.nextGaussian()));
            }
            shape.spread(readings, spread);
            for (int i = 0; i < OUTLETS.length; i++) {
                double error = heightM[i] - truth(OUTLETS[i], height, slope, tilt, bend, ground);
                sum[i] += known[i] ? error * error / variance[i] : 1;
            }
        }
        for (int i = 0; i < OUTLETS.length; i++) {
            assertThat(sum[i] / 2000).as("outlet %d, seed %d", i, seed).isBetween(0.7, 1.3);
        }
    }

    /** Heights of a random walk at whole metres outward, 2π² · 1.024e-5 m for each metre (ISO 8608, class D). */
    private static double[] walk(Random random) {
        double[] walk = new double[19];
        for (int i = 1; i < walk.length; i++) {
            walk[i] = walk[i - 1] + Math.sqrt(2 * Math.PI * Math.PI * 1.024e-5) * random.nextGaussian();
        }
        return walk;
    }

    private static double truth(
            double at, double height, double slope, double[] tilt, double[] bend, double[][] ground) {
        int side = at < 0 ? 0 : 1;
        double beyond = Math.max(0, Math.abs(at) - HINGE_M);
        return height
                + slope * at
                + tilt[side] * beyond
                + bend[side] * Math.pow(beyond / (18 - HINGE_M), 2)
                + ground[side][(int) Math.abs(at)];
    }

    @Test
    void aSingleSensorSpeaksForItsNeighbourhoodOnly() {
        spread(sensorsAt(0), List.of(reading(0.4)));

        assertThat(known).containsExactly(false, false, false, true, false, false, false);
        assertThat(heightM[3]).isCloseTo(0.4, within(1e-6));
    }

    @Test
    void withoutSensorsNothingIsKnown() {
        spread(List.of(), List.of());

        assertThat(known).containsOnly(false);
    }

    @Test
    void ratesSpreadAsHeightsDo() {
        double[] places = {-17, -9, 0, 9, 17};
        List<Quantity> rates = new ArrayList<>();
        for (double at : places) {
            rates.add(Quantity.known(0.02 * at, 0.01, 0));
        }
        new BoomShape(sensorsAt(places), OUTLETS, HINGE_M).spreadRates(rates, spread);

        for (int i = 0; i < OUTLETS.length; i++) {
            assertThat(spread.rateMps()[i]).isCloseTo(0.02 * OUTLETS[i], within(5e-3));
            assertThat(spread.rateVariance()[i]).isGreaterThan(0.002);
        }
    }
}
