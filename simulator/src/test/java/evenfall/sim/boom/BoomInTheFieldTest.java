package evenfall.sim.boom;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.sim.chance.Chance;
import evenfall.sim.ground.Crossing;
import evenfall.sim.ground.Ground;
import evenfall.sim.ground.RoughField;
import evenfall.sim.ground.RoughnessClass;
import evenfall.sim.ground.Terrace;
import evenfall.sim.vehicle.Chassis;
import evenfall.sim.vehicle.ChassisSpec;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How the presets behave in a field at 5.5 m/s. The limits are our choice of what such machines do (tips of
 * a 36 m boom on class D: standard deviation about 0.09 m, 0.2 to 0.8 m in extremes), no source.
 */
class BoomInTheFieldTest {

    private static final double DT_S = 0.01;
    private static final double SPEED_MPS = 5.5;

    /** Heights of both tips over 5 minutes, after 20 s of settling, one every 0.02 s. */
    private static double[] tipHeights(BoomSpec spec, int outlets, RoughnessClass roughness, long seed) {
        double[] right = {-(outlets - 1) / 2.0 * 0.508, (outlets - 1) / 2.0 * 0.508};
        Ground ground = RoughField.of(roughness, Chance.stream(seed, "ground"));
        Chassis chassis = new Chassis(ChassisSpec.selfPropelled());
        Boom boom = new Boom(spec, right);
        double[] heights = new double[30_000];
        int n = 0;
        for (int i = 0; i < 32_000; i++) {
            double x = SPEED_MPS * i * DT_S;
            chassis.step(DT_S, ground, x, 0);
            boom.step(DT_S, chassis, ground, x, 0);
            if (i >= 2_000 && i % 2 == 0) {
                heights[n++] = boom.outletHeightM(0);
                heights[n++] = boom.outletHeightM(1);
            }
        }
        assertThat(n).isEqualTo(heights.length);
        Arrays.sort(heights);
        return heights;
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }

    private static double standardDeviation(double[] values) {
        double mean = mean(values);
        double sum = 0;
        for (double value : values) {
            sum += (value - mean) * (value - mean);
        }
        return Math.sqrt(sum / (values.length - 1));
    }

    @ParameterizedTest
    @CsvSource({"B, 0.015, 0.035", "C, 0.03, 0.06", "D, 0.06, 0.12", "E, 0.12, 0.24"})
    void theTipsOfA36MetreBoomMoveAsMuchAsTheGroundIsRough(RoughnessClass roughness, double least, double most) {
        for (long seed = 1; seed <= 3; seed++) {
            double[] heights = tipHeights(BoomSpec.wide36(), 72, roughness, seed);
            assertThat(standardDeviation(heights)).as("seed %d", seed).isBetween(least, most);
            assertThat(mean(heights)).as("seed %d", seed).isBetween(0.46, 0.54);
        }
    }

    @Test
    void onClassDTheTipsOfA36MetreBoomReachExtremesOfTwoAndEightTenths() {
        double[] heights = tipHeights(BoomSpec.wide36(), 72, RoughnessClass.D, 1);
        assertThat(heights[heights.length / 1000]).isBetween(0.15, 0.30);
        assertThat(heights[heights.length - heights.length / 1000]).isBetween(0.70, 0.88);
    }

    @Test
    void theTipsOfA24MetreBoomMoveLess() {
        double[] narrow = tipHeights(BoomSpec.wide24(), 48, RoughnessClass.D, 1);
        double[] wide = tipHeights(BoomSpec.wide36(), 72, RoughnessClass.D, 1);
        assertThat(standardDeviation(narrow)).isBetween(0.05, standardDeviation(wide));
    }

    @Test
    void heightControlHelpsABoomThatIsNotTooFast() {
        double[] with = tipHeights(BoomSpec.wide36(), 72, RoughnessClass.D, 1);
        double[] without = tipHeights(BoomSpec.wide36().withControl(HeightControlSpec.none()), 72, RoughnessClass.D, 1);
        assertThat(standardDeviation(with)).isLessThan(standardDeviation(without));
    }

    @Test
    void atASkewedTerraceTheLeftTipDivesFirstAndBothLiftTooLate() {
        // The left tip is over the back slope 2·17.78·tan 25°/5.5 = 3.0 s before the right one.
        Ground ground = Terrace.broadBase(Crossing.at(60, Math.toRadians(25)));
        Chassis chassis = new Chassis(ChassisSpec.selfPropelled());
        Boom boom = new Boom(BoomSpec.wide36(), new double[] {-17.78, 17.78});
        double[] lowestS = new double[2];
        double[] lowest = {1, 1};
        double[] highest = {0, 0};
        double leftBelow = Double.NaN;
        double leftMoves = Double.NaN;
        double ridgeS = (60 - 17.78 * Math.tan(Math.toRadians(25)) + 5) / SPEED_MPS;
        for (int i = 0; i < 3000; i++) {
            double t = i * DT_S;
            chassis.step(DT_S, ground, SPEED_MPS * t, 0);
            boom.step(DT_S, chassis, ground, SPEED_MPS * t, 0);
            for (int tip = 0; tip < 2; tip++) {
                double height = boom.outletHeightM(tip);
                double firstLook = ridgeS + (tip == 0 ? 0 : 2 * 17.78 * Math.tan(Math.toRadians(25)) / SPEED_MPS);
                if (height < lowest[tip] && t < firstLook + 0.5) {
                    lowest[tip] = height;
                    lowestS[tip] = t;
                }
                highest[tip] = Math.max(highest[tip], height);
            }
            if (Double.isNaN(leftBelow) && boom.outletHeightM(0) < 0.45) {
                leftBelow = t;
            }
            if (Double.isNaN(leftMoves) && boom.leftTiltMpm() != 0) {
                leftMoves = t;
            }
        }
        assertThat(lowest[0]).as("the left tip dives").isLessThan(0.30);
        assertThat(lowest[1]).as("the right tip dives").isLessThan(0.30);
        assertThat(lowestS[0]).as("left first").isLessThan(lowestS[1] - 1.0);
        assertThat(leftMoves - leftBelow).as("the control's lag, s").isBetween(0.5, 1.5);
        assertThat(leftMoves).as("too late for the dive").isGreaterThan(lowestS[0]);
        assertThat(highest[0]).as("and then the tip is thrown up").isGreaterThan(0.80);
        assertThat(highest[1]).isGreaterThan(0.80);
        // 20 s later all is calm again.
        assertThat(boom.outletHeightM(0)).isBetween(0.42, 0.58);
        assertThat(boom.outletHeightM(1)).isBetween(0.42, 0.58);
    }
}
