package evenfall.sim.boom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenfall.sim.chance.Chance;
import evenfall.sim.ground.CompositeGround;
import evenfall.sim.ground.Crossing;
import evenfall.sim.ground.Ground;
import evenfall.sim.ground.Knoll;
import evenfall.sim.ground.Rise;
import evenfall.sim.ground.RoughField;
import evenfall.sim.ground.RoughnessClass;
import evenfall.sim.ground.Ruts;
import evenfall.sim.ground.SideSlope;
import evenfall.sim.vehicle.Chassis;
import evenfall.sim.vehicle.ChassisSpec;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BoomTest {

    private static final double DT_S = 0.01;
    private static final double SPEED_MPS = 5.5;

    /** Wheels so stiff that the chassis follows the ground at once: what moves is the boom. */
    private static final ChassisSpec STIFF =
            new ChassisSpec(15_000, 21_600, 38_400, 3.0, 3.8, 1e14, 1e9, 0.5, 1.6, 1.4);

    /** One machine driving straight ahead. */
    private static final class Drive {
        final Chassis chassis;
        final Boom boom;
        final Ground ground;
        final double dtS;
        int step;

        Drive(ChassisSpec chassisSpec, BoomSpec boomSpec, int outlets, Ground ground, double dtS) {
            this.chassis = new Chassis(chassisSpec);
            this.boom = new Boom(boomSpec, outletsAcross(outlets));
            this.ground = ground;
            this.dtS = dtS;
        }

        Drive(BoomSpec boomSpec, Ground ground) {
            this(ChassisSpec.selfPropelled(), boomSpec, 72, ground, DT_S);
        }

        double xM() {
            return SPEED_MPS * step * dtS;
        }

        void step() {
            chassis.step(dtS, ground, xM(), 0);
            boom.step(dtS, chassis, ground, xM(), 0);
            step++;
        }

        void drive(double seconds) {
            for (int i = 0; i < Math.round(seconds / dtS); i++) {
                step();
            }
        }
    }

    private static double[] outletsAcross(int n) {
        double[] right = new double[n];
        for (int i = 0; i < n; i++) {
            right[i] = (i - (n - 1) / 2.0) * 0.508;
        }
        return right;
    }

    private static BoomSpec uncontrolled(BoomSpec spec) {
        return spec.withControl(HeightControlSpec.none());
    }

    @Test
    void onLevelGroundEveryOutletStaysAtItsSetHeight() {
        for (BoomSpec spec : List.of(BoomSpec.wide36(), BoomSpec.rigid(18.3, 0.65))) {
            Drive drive = new Drive(spec, Ground.level());
            drive.drive(20);
            for (int i = 0; i < drive.boom.outletCount(); i++) {
                assertThat(drive.boom.outletHeightM(i)).isCloseTo(spec.setHeightM(), within(1e-12));
                assertThat(drive.boom.outletVerticalSpeedMps(i)).isZero();
                assertThat(drive.boom.outletRollRad(i)).isZero();
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.12, 0.03, 0.10})
    void aBoomBoltedOnStaysParallelToASideSlopeExactly(double slope) {
        Drive drive = new Drive(BoomSpec.rigid(18.3, 0.5), SideSlope.everywhere(slope));
        drive.drive(5);
        for (int i = 0; i < drive.boom.outletCount(); i++) {
            assertThat(drive.boom.outletHeightM(i)).isCloseTo(0.5, within(1e-12));
            assertThat(drive.boom.outletRollRad(i)).isCloseTo(Math.atan(slope), within(1e-5));
        }
    }

    @Test
    void aHangingBoomComesParallelToASlopeSlowly() {
        Drive drive = new Drive(uncontrolled(BoomSpec.wide36()), new SideSlope(0.06, 20, 10));
        drive.drive(10);
        double soon = drive.boom.outletHeightM(71);
        drive.drive(80);
        assertThat(soon).as("right tip, uphill, soon after").isLessThan(0.25);
        for (int i = 0; i < 72; i++) {
            assertThat(drive.boom.outletHeightM(i)).isCloseTo(0.5, within(1e-4));
        }
    }

    /** Rises to a new level (or slope) over 2 m, so that after it everything vibrates freely. */
    private static Drive kicked(BoomSpec spec, Ground kick) {
        Drive drive = new Drive(STIFF, uncontrolled(spec), 72, kick, 0.005);
        // Front wheels first, the place of the boom last.
        drive.drive((20 + 2 + 1) / SPEED_MPS);
        return drive;
    }

    @Test
    void theWingsBendAtTheirFrequencyWithTheirDamping() {
        for (BoomSpec spec : List.of(BoomSpec.wide36(), BoomSpec.wide24())) {
            Drive drive = new Drive(STIFF, uncontrolled(spec), 48, new Rise(Crossing.at(20), 0.2, 2), 0.005);
            drive.drive((20 + 2 + 1) / SPEED_MPS);
            List<Double> crossings = new ArrayList<>();
            List<Double> peaks = new ArrayList<>();
            followFreeVibration(drive, crossings, peaks, () -> drive.boom.leftBendM());
            assertVibration(crossings, peaks, spec.bendingHz(), spec.bendingDampingRatio());
        }
    }

    @Test
    void theBoomRollsAtItsFrequencyWithItsDamping() {
        // Coupled in full, so that the slow levelling adds nothing to the free motion. Little damping, so
        // that there is a vibration to measure.
        BoomSpec preset = BoomSpec.wide36();
        BoomSpec spec = new BoomSpec(18.3, 2.5, 0.5, preset.rollModeHz(), 0.15, 1, 6, 1.2, 0.08, 0.6, preset.control());
        Drive drive = kicked(spec, new SideSlope(0.03, 20, 2));
        List<Double> crossings = new ArrayList<>();
        List<Double> peaks = new ArrayList<>();
        followFreeVibration(drive, crossings, peaks, () -> Math.tan(drive.boom.rollRad()) - 0.03);
        assertVibration(crossings, peaks, spec.rollModeHz(), 0.15);
    }

    private interface Reading {
        double now();
    }

    private static void followFreeVibration(Drive drive, List<Double> crossings, List<Double> peaks, Reading reading) {
        double before = reading.now();
        double peak = 0;
        for (int i = 1; crossings.size() < 9 && i < 20_000; i++) {
            drive.step();
            double now = reading.now();
            if (before < 0 != now < 0) {
                crossings.add((i - now / (now - before)) * drive.dtS);
                peaks.add(peak);
                peak = 0;
            }
            peak = Math.max(peak, Math.abs(now));
            before = now;
        }
    }

    private static void assertVibration(List<Double> crossings, List<Double> peaks, double naturalHz, double zeta) {
        int n = crossings.size() - 1;
        assertThat(n).isEqualTo(8);
        double dampedHz = 0.5 * n / (crossings.get(n) - crossings.get(0));
        assertThat(dampedHz).isCloseTo(naturalHz * Math.sqrt(1 - zeta * zeta), within(1e-4 * naturalHz));
        double decrement = Math.log(peaks.get(1) / peaks.get(n)) / (n - 1);
        double found = decrement / Math.sqrt(Math.PI * Math.PI + decrement * decrement);
        assertThat(found).isCloseTo(zeta, within(0.01 * zeta));
        for (int i = 2; i <= n; i++) {
            assertThat(peaks.get(i)).isLessThan(peaks.get(i - 1));
        }
    }

    /**
     * A wing whose hinge is lifted with constant acceleration a sags by Γz·a/ω², with Γz summed here over
     * 100,000 pieces of wing: mass per metre 1 − 0.6 s/L, shape (s/L)².
     */
    @Test
    void aWingSagsUnderAccelerationAsItsMassesSay() {
        double load = 0;
        double turning = 0;
        double modal = 0;
        int pieces = 100_000;
        for (int i = 0; i < pieces; i++) {
            double at = (i + 0.5) / pieces;
            double mass = 1 - 0.6 * at;
            load += mass * at * at / pieces;
            turning += mass * at * at * at / pieces;
            modal += mass * at * at * at * at / pieces;
        }
        BoomSpec spec = new BoomSpec(
                18.3, 2.5, 0.5, Double.POSITIVE_INFINITY, 0, 1, 0, 1.2, 0.5, 0.6, HeightControlSpec.none());
        double omega = 2 * Math.PI * 1.2;

        double a = 0.3;
        Drive lifted = new Drive(STIFF, spec, 72, (xM, yM) -> 0.5 * a * (xM / SPEED_MPS) * (xM / SPEED_MPS), 0.002);
        lifted.drive(8);
        assertThat(lifted.boom.leftBendM()).isCloseTo(-load / modal * a / (omega * omega), within(1e-5));

        // Rolled with constant acceleration: the hinge 2.5 m out is lifted, and the wing turns.
        double turn = 0.01;
        Drive rolled =
                new Drive(STIFF, spec, 72, (xM, yM) -> 0.5 * turn * yM * (xM / SPEED_MPS) * (xM / SPEED_MPS), 0.002);
        rolled.drive(8);
        double sag = (load * 2.5 + turning * (18.3 - 2.5)) / modal * turn / (omega * omega);
        assertThat(rolled.boom.rightBendM()).isCloseTo(-sag, within(1e-5));
        assertThat(rolled.boom.leftBendM()).isCloseTo(sag, within(1e-5));
    }

    @Test
    void theErrorOfHeightAndSpeedFallsWithTheSquareOfTheStep() {
        Ground ground = new CompositeGround(List.of(new Knoll(20, 1, 12, 0.5), new Knoll(26, -6, 12, 0.4)));
        double[] exact = tipAfter(ground, 0.0005);
        double[] coarse = tipAfter(ground, 0.02);
        double[] fine = tipAfter(ground, 0.01);
        for (int i = 0; i < exact.length; i++) {
            double coarseError = Math.abs(coarse[i] - exact[i]);
            double fineError = Math.abs(fine[i] - exact[i]);
            assertThat(coarseError).isBetween(1e-6, 1e-2);
            assertThat(coarseError / fineError).isBetween(3.3, 4.7);
        }
    }

    private static double[] tipAfter(Ground ground, double dtS) {
        Drive drive = new Drive(ChassisSpec.selfPropelled(), uncontrolled(BoomSpec.wide36()), 72, ground, dtS);
        drive.drive(4.0);
        drive.step();
        return new double[] {
            drive.boom.outletHeightM(71), drive.boom.outletVerticalSpeedMps(0), drive.boom.outletVerticalSpeedMps(60)
        };
    }

    @Test
    void speedAndTiltOfAnOutletAreTheSlopesOfItsHeight() {
        // Ruts under the wheels only: no outlet looks into them, so heights change by the boom alone.
        Ground ground = new Ruts(15, 25, 3, 0, 3, 0.9, 0.2, 0.05);
        double[] outlets = {-17, -9, -4, -0.6, 0.6, 4, 9, 17};
        Chassis chassis = new Chassis(ChassisSpec.selfPropelled());
        double step = 0.001;
        // Pairs of outlets 1 mm apart beside each one for the tilt.
        double[] pairs = new double[outlets.length * 3];
        for (int i = 0; i < outlets.length; i++) {
            pairs[3 * i] = outlets[i] - 0.0005;
            pairs[3 * i + 1] = outlets[i];
            pairs[3 * i + 2] = outlets[i] + 0.0005;
        }
        // No soil: its blows come between two readings.
        Boom boom = new Boom(uncontrolled(BoomSpec.wide36()).withSoil(SoilContactSpec.none()), pairs);
        double[] before = new double[pairs.length];
        double[] now = new double[pairs.length];
        double fastest = 0;
        for (int i = 0; i < 6000; i++) {
            double[] swap = before;
            before = now;
            now = swap;
            double[] speedBefore = new double[outlets.length];
            if (i > 0) {
                for (int k = 0; k < outlets.length; k++) {
                    speedBefore[k] = boom.outletVerticalSpeedMps(3 * k + 1);
                }
            }
            chassis.step(step, ground, SPEED_MPS * i * step, 0);
            boom.step(step, chassis, ground, SPEED_MPS * i * step, 0);
            boom.outletHeightsM(now);
            for (int k = 0; k < outlets.length && i > 0; k++) {
                double mean = (speedBefore[k] + boom.outletVerticalSpeedMps(3 * k + 1)) / 2;
                assertThat((now[3 * k + 1] - before[3 * k + 1]) / step).isCloseTo(mean, within(1e-3));
                assertThat((now[3 * k + 2] - now[3 * k]) / 0.001)
                        .isCloseTo(Math.tan(boom.outletRollRad(3 * k + 1)), within(1e-5));
                fastest = Math.max(fastest, Math.abs(mean));
            }
        }
        assertThat(fastest).as("the boom moves").isGreaterThan(0.3);
    }

    @Test
    void allHeightsAtOnceAreTheHeightsOneByOne() {
        Drive drive = new Drive(BoomSpec.wide36(), RoughField.of(RoughnessClass.D, Chance.stream(2, "ground")));
        double[] heights = new double[72];
        for (int n = 0; n < 10; n++) {
            drive.drive(3.3);
            drive.boom.outletHeightsM(heights);
            for (int i = 0; i < 72; i++) {
                assertThat(heights[i]).isCloseTo(drive.boom.outletHeightM(i), within(1e-12));
                assertThat(heights[i]).isCloseTo(drive.boom.heightAtM(drive.boom.outletRightM(i)), within(1e-12));
            }
        }
    }

    @Test
    void allMotionsAtOnceAreTheMotionsOneByOne() {
        RoughField ground = RoughField.of(RoughnessClass.D, Chance.stream(3, "ground"));
        Drive drive = new Drive(BoomSpec.wide36(), ground);
        int from = 5;
        double[][] rows = new double[7][from + 72];
        for (int n = 0; n < 10; n++) {
            drive.drive(3.3);
            Boom boom = drive.boom;
            boom.outletsOverDatumM(rows[0], from);
            boom.outletPlacesM(rows[1], rows[2], from);
            boom.outletRollsRad(rows[3], from);
            boom.outletVerticalSpeedsMps(rows[4], from);
            boom.outletsForward(rows[5], rows[6], from);
            for (int i = 0; i < 72; i++) {
                double underM = ground.heightM(rows[1][from + i], rows[2][from + i]);
                assertThat(rows[0][from + i] - underM).isCloseTo(boom.outletHeightM(i), within(1e-12));
                assertThat(rows[3][from + i]).isCloseTo(boom.outletRollRad(i), within(1e-14));
                assertThat(rows[4][from + i]).isCloseTo(boom.outletVerticalSpeedMps(i), within(1e-13));
                assertThat(rows[5][from + i]).isCloseTo(boom.outletForwardM(i), within(1e-14));
                assertThat(rows[6][from + i]).isCloseTo(boom.outletForwardSpeedMps(i), within(1e-14));
            }
            for (double[] row : rows) {
                assertThat(row[from - 1]).as("what lies before a row stays").isZero();
            }
        }
    }

    @Test
    void theSameDriveGivesTheSameHeightsToTheLastBit() {
        Drive one = new Drive(BoomSpec.wide36(), RoughField.of(RoughnessClass.D, Chance.stream(2, "ground")));
        Drive other = new Drive(BoomSpec.wide36(), RoughField.of(RoughnessClass.D, Chance.stream(2, "ground")));
        double[] a = new double[72];
        double[] b = new double[72];
        for (int n = 0; n < 3000; n++) {
            one.step();
            other.step();
            one.boom.outletHeightsM(a);
            other.boom.outletHeightsM(b);
            assertThat(a).isEqualTo(b);
        }
    }

    @Test
    void anOutletMayBeInTheSoil() {
        Drive drive = new Drive(BoomSpec.rigid(18.3, 0.5), (xM, yM) -> yM > 10 ? 0.8 : 0.0);
        drive.drive(1);
        assertThat(drive.boom.outletHeightM(71)).isCloseTo(-0.3, within(1e-12));
    }

    @Test
    void wrongUseIsRefused() {
        BoomSpec spec = BoomSpec.wide24();
        assertThatThrownBy(() -> new Boom(spec, new double[] {0, 12.3}))
                .hasMessage("outlet at 12.3 m is not on the boom, which reaches 12.2 m to each side");
        Boom boom = new Boom(spec, new double[] {0});
        assertThatThrownBy(() -> boom.outletHeightM(0)).isInstanceOf(IllegalStateException.class);
        Chassis chassis = new Chassis(ChassisSpec.selfPropelled());
        chassis.step(0.01, Ground.level(), 0, 0);
        boom.step(0.01, chassis, Ground.level(), 0, 0);
        assertThatThrownBy(() -> boom.step(0.02, chassis, Ground.level(), 0, 0))
                .hasMessage("step must stay 0.01 s, not 0.02");
        assertThatThrownBy(() -> spec.withControl(HeightControlSpec.usual(List.of(13.0))))
                .hasMessage("height sensor at 13.0 m is not on the boom, which reaches 12.2 m to each side");
        assertThatThrownBy(() -> spec.withSetHeightM(0))
                .hasMessage("set height of the boom, m, must be above 0, not 0.0");
        assertThatThrownBy(() -> BoomSpec.rigid(0, 0.5)).isInstanceOf(IllegalArgumentException.class);
    }
}
