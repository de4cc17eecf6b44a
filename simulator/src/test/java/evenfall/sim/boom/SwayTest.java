package evenfall.sim.boom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenfall.sim.chance.Chance;
import evenfall.sim.ground.Ground;
import evenfall.sim.ground.RoughField;
import evenfall.sim.ground.RoughnessClass;
import evenfall.sim.vehicle.Chassis;
import evenfall.sim.vehicle.ChassisSpec;
import evenfall.sim.vehicle.Pose;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.hipparchus.linear.EigenDecompositionNonSymmetric;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;

/**
 * The model under test: a boom of 1 − 0.6 s/L kg per metre of wing (s beyond the hinge, L long) and 1 kg per
 * metre between the hinges, held at its centre by a yaw spring to the chassis's heading, whose wings bend by
 * (s/L)². Its mass and stiffness are summed here over pieces of boom.
 */
class SwayTest {

    private static final double DT_S = 0.005;
    private static final double SPEED_MPS = 4.0;
    private static final double HINGE_M = 2.5;
    private static final double WING_M = 15.8;

    private static BoomSpec boomOf(SwaySpec sway) {
        return BoomSpec.wide36().withControl(HeightControlSpec.none()).withSway(sway);
    }

    private static SwaySpec undriven(double yawZeta, double bendingZeta) {
        return new SwaySpec(0.75, yawZeta, 1.0, bendingZeta, 0, 1, 0);
    }

    /** (yaw, bending) mass matrix, and the symmetric bending's masses, over 200,000 pieces. */
    private static double[] masses() {
        double inertia = 0;
        double both = 0;
        double bend = 0;
        double move = 0;
        int pieces = 200_000;
        for (int i = 0; i < pieces; i++) {
            double y = (i + 0.5) / pieces * (HINGE_M + WING_M);
            double beyond = Math.max(0, y - HINGE_M) / WING_M;
            double mass = (1 - 0.6 * beyond) * (HINGE_M + WING_M) / pieces;
            double shape = beyond * beyond;
            inertia += 2 * mass * y * y;
            both += 2 * mass * y * shape;
            bend += 2 * mass * shape * shape;
            move += 2 * mass * shape;
        }
        return new double[] {inertia, both, bend, move};
    }

    /** One machine on level ground on a path that a test gives by time. */
    private static final class Driven {
        final Chassis chassis = new Chassis(ChassisSpec.selfPropelled());
        final Boom boom;
        final Ground ground;
        final DoubleFunction<Pose> path;
        final double dtS;
        int step;

        Driven(BoomSpec spec, Ground ground, double dtS, DoubleFunction<Pose> path) {
            this.boom = new Boom(spec, new double[] {-18.3, -10, -2, 0, 2, 10, 18.3});
            this.ground = ground;
            this.path = path;
            this.dtS = dtS;
        }

        void step() {
            Pose pose = path.apply(step * dtS);
            chassis.step(dtS, ground, pose);
            boom.step(dtS, chassis, ground, pose);
            step++;
        }

        void drive(double seconds) {
            long steps = Math.round(seconds / dtS);
            while (step <= steps) {
                step();
            }
        }
    }

    /** Even motion with a smooth change of heading and of speed between 1 and 3 s. */
    private static double bump(double t) {
        double u = Math.max(0, Math.min(1, (t - 1) / 2));
        return u * u * u * (10 - u * (15 - 6 * u));
    }

    private static double bumpAcceleration(double t) {
        double u = Math.max(0, Math.min(1, (t - 1) / 2));
        return 60 * u * (1 - u * (3 - 2 * u)) / 4;
    }

    @Test
    void drivingEvenlyMovesNothing() {
        Driven driven = new Driven(
                boomOf(SwaySpec.wide36()),
                Ground.level(),
                DT_S,
                t -> Pose.of(SPEED_MPS * t * 0.8, SPEED_MPS * t * 0.6, Math.atan2(0.6, 0.8)));
        driven.drive(20);
        for (int i = 0; i < driven.boom.outletCount(); i++) {
            assertThat(driven.boom.outletForwardM(i)).isCloseTo(0, within(1e-10));
            assertThat(driven.boom.outletForwardSpeedMps(i)).isCloseTo(0, within(1e-9));
        }
    }

    @Test
    void itSwaysAsAnIntegratorOfTheWholeBoomSays() {
        double[] m = masses();
        double turn = 0.4;
        double gain = 1.5;
        double yawStiffness = m[0] * Math.pow(2 * Math.PI * 0.75, 2);
        double bendStiffness = m[2] * Math.pow(2 * Math.PI, 2);
        double det = m[0] * m[2] - m[1] * m[1];
        OrdinaryDifferentialEquation equation = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 6;
            }

            @Override
            public double[] computeDerivatives(double t, double[] q) {
                double alpha = turn * bumpAcceleration(t);
                double force0 = -yawStiffness * q[0] - m[0] * alpha;
                double force1 = -bendStiffness * q[1] - m[1] * alpha;
                return new double[] {
                    q[3],
                    q[4],
                    q[5],
                    (m[2] * force0 - m[1] * force1) / det,
                    (m[0] * force1 - m[1] * force0) / det,
                    (-bendStiffness * q[2] - m[3] * gain * bumpAcceleration(t)) / m[2]
                };
            }
        };
        for (double stop : new double[] {1.8, 2.6, 4.1}) {
            double[] q = new DormandPrince853Integrator(1e-7, 0.01, 1e-12, 1e-12)
                    .integrate(equation, new ODEState(0, new double[6]), stop)
                    .getPrimaryState();
            Driven driven = new Driven(boomOf(undriven(0, 0)), Ground.level(), 0.001, t -> pushed(t, turn, gain));
            driven.drive(stop);
            Boom boom = driven.boom;
            for (int i : new int[] {0, 1, 2, 3, 5, 6}) {
                double y = boom.outletRightM(i);
                double shape = Math.pow(Math.max(0, Math.abs(y) - HINGE_M) / WING_M, 2);
                double side = Math.signum(y);
                assertThat(boom.outletForwardM(i))
                        .as("%f m at %f s", y, stop)
                        .isCloseTo(-y * q[0] + shape * (q[2] - side * q[1]), within(1e-4));
                assertThat(boom.outletForwardSpeedMps(i))
                        .as("%f m at %f s", y, stop)
                        .isCloseTo(-y * q[3] + shape * (q[5] - side * q[4]), within(1e-3));
            }
            assertThat(Math.abs(boom.outletForwardM(0))).as("something happens").isGreaterThan(0.05);
        }
    }

    /** On a path as long and as turned as the bumps say, summed up in fine pieces. */
    private static Pose pushed(double t, double turn, double gain) {
        double x = 0;
        double y = 0;
        int pieces = 2000;
        double before = 0;
        for (int i = 1; i <= pieces; i++) {
            double to = t * i / pieces;
            double gone = SPEED_MPS * to + gain * bump(to);
            double middle = turn * bump(to - 0.5 * t / pieces);
            x += (gone - before) * Math.cos(middle);
            y += (gone - before) * Math.sin(middle);
            before = gone;
        }
        return Pose.of(x, y, turn * bump(t));
    }

    @Test
    void freeVibrationHasTheFrequenciesOfTheWholeBoomAndTheDampingOfItsSpec() {
        double[] m = masses();
        RealMatrix mass = MatrixUtils.createRealMatrix(new double[][] {{m[0], m[1]}, {m[1], m[2]}});
        RealMatrix stiffness = MatrixUtils.createRealDiagonalMatrix(new double[] {m[0] * 0.75 * 0.75, m[2]});
        EigenDecompositionNonSymmetric eigen = new EigenDecompositionNonSymmetric(
                new LUDecomposition(mass).getSolver().solve(stiffness));
        double slowHz = Math.sqrt(Math.min(
                eigen.getEigenvalue(0).getReal(), eigen.getEigenvalue(1).getReal()));

        // A heading that stops turning leaves the slow mode; the fast one, damped by half, is gone by then.
        SwaySpec sway = new SwaySpec(0.75, 0.06, 1.0, 0.5, 0, 1, 0);
        Driven turned = new Driven(boomOf(sway), Ground.level(), DT_S, t -> Pose.of(0, 0, 0.3 * bump(t)));
        turned.drive(5);
        assertVibration(turned, 0, slowHz, 0.06);
        assertThat(slowHz).as("slower than yaw or bending alone").isBetween(0.5, 0.75);

        // Braking leaves both wings bending alike.
        Driven braked = new Driven(
                boomOf(undriven(0.2, 0.04)), Ground.level(), DT_S, t -> Pose.straight(SPEED_MPS * t - bump(t), 0));
        braked.drive(4);
        assertVibration(braked, 0, 1.0, 0.04);
        assertThat(braked.boom.outletForwardM(6)).isEqualTo(braked.boom.outletForwardM(0));
        assertThat(braked.boom.outletForwardM(3)).isZero();
    }

    private static void assertVibration(Driven driven, int outlet, double naturalHz, double zeta) {
        List<Double> crossings = new ArrayList<>();
        List<Double> peaks = new ArrayList<>();
        double before = driven.boom.outletForwardM(outlet);
        double peak = 0;
        for (int i = 1; crossings.size() < 9 && i < 20_000; i++) {
            driven.step();
            double now = driven.boom.outletForwardM(outlet);
            if (before < 0 != now < 0) {
                crossings.add((i - now / (now - before)) * driven.dtS);
                peaks.add(peak);
                peak = 0;
            }
            peak = Math.max(peak, Math.abs(now));
            before = now;
        }
        int n = crossings.size() - 1;
        assertThat(n).isEqualTo(8);
        double dampedHz = 0.5 * n / (crossings.get(n) - crossings.get(0));
        assertThat(dampedHz).isCloseTo(naturalHz * Math.sqrt(1 - zeta * zeta), within(2e-4 * naturalHz));
        double decrement = Math.log(peaks.get(1) / peaks.get(n)) / (n - 1);
        double found = decrement / Math.sqrt(Math.PI * Math.PI + decrement * decrement);
        assertThat(found).isCloseTo(zeta, within(0.01 * zeta));
    }

    @Test
    void theEnergyOfAllSwayTogetherNeverGrowsOnceNothingDrivesIt() {
        double[] m = masses();
        for (double dt : new double[] {0.002, 0.01, 0.05, 0.3}) {
            for (double zeta : new double[] {0, 0.06}) {
                // Thrown by a jerk of heading and speed at 1 s, then left alone at an even pace.
                Driven driven = new Driven(
                        boomOf(undriven(zeta, zeta)),
                        Ground.level(),
                        dt,
                        t -> t < 1 ? Pose.straight(2 * t, 0) : Pose.of(3 * t - 1, 0, 0.2));
                driven.drive(1.5);
                // On from here straight ahead in its own new direction.
                Pose corner = driven.path.apply((driven.step - 1) * dt);
                double energy = energy(driven.boom, m);
                assertThat(energy).isGreaterThan(0.1);
                double first = energy;
                for (int i = 1; i < 2000; i++) {
                    Pose pose = Pose.of(corner.xM() + 3 * dt * i, corner.yM(), 0.2);
                    driven.chassis.step(dt, driven.ground, pose);
                    driven.boom.step(dt, driven.chassis, driven.ground, pose);
                    double now = energy(driven.boom, m);
                    if (i > 2) {
                        assertThat(now)
                                .as("step %d of %f s", i, dt)
                                .isLessThanOrEqualTo(energy * (1 + 1e-8) + 1e-12 * first);
                    }
                    energy = now;
                }
                if (zeta > 0 && dt > 0.005) {
                    assertThat(energy).isLessThan(0.2 * first);
                }
            }
        }
    }

    /** Kinetic energy of both wings and the centre by their speeds, and that of the springs. */
    private static double energy(Boom boom, double[] m) {
        double left = boom.outletForwardSpeedMps(0);
        double right = boom.outletForwardSpeedMps(6);
        double yawSpeed = -boom.outletForwardSpeedMps(4) / 2;
        double yaw = -boom.outletForwardM(4) / 2;
        // Tips: ∓18.3 yaw ∓ opposite + alike.
        double alikeSpeed = (left + right) / 2;
        double oppositeSpeed = (left - right) / 2 - 18.3 * yawSpeed;
        double alike = (boom.outletForwardM(0) + boom.outletForwardM(6)) / 2;
        double opposite = (boom.outletForwardM(0) - boom.outletForwardM(6)) / 2 - 18.3 * yaw;
        double kinetic = 0.5 * m[0] * yawSpeed * yawSpeed
                + m[1] * yawSpeed * oppositeSpeed
                + 0.5 * m[2] * (oppositeSpeed * oppositeSpeed + alikeSpeed * alikeSpeed);
        double yawStiffness = m[0] * Math.pow(2 * Math.PI * 0.75, 2);
        double bendStiffness = m[2] * Math.pow(2 * Math.PI, 2);
        return kinetic + 0.5 * yawStiffness * yaw * yaw + 0.5 * bendStiffness * (opposite * opposite + alike * alike);
    }

    @Test
    void theErrorOfPlaceAndSpeedFallsWithTheSquareOfTheStep() {
        double[] exact = tipsAfter(0.000_5);
        double[] coarse = tipsAfter(0.02);
        double[] fine = tipsAfter(0.01);
        for (int i = 0; i < exact.length; i++) {
            double coarseError = Math.abs(coarse[i] - exact[i]);
            double fineError = Math.abs(fine[i] - exact[i]);
            assertThat(coarseError).isBetween(1e-7, 1e-2);
            assertThat(coarseError / fineError).as("reading %d", i).isBetween(3.3, 4.8);
        }
    }

    private static double[] tipsAfter(double dtS) {
        Driven driven = new Driven(
                boomOf(undriven(0.2, 0.06)),
                Ground.level(),
                dtS,
                t -> Pose.of(3 * t + 0.8 * bump(t), 0, 0.3 * bump(t)));
        driven.drive(2.2);
        return new double[] {
            driven.boom.outletForwardM(0),
            driven.boom.outletForwardM(6),
            driven.boom.outletForwardSpeedMps(0),
            driven.boom.outletForwardSpeedMps(5)
        };
    }

    @Test
    void aMirroredFieldAndPathGiveAMirroredBoom() {
        Ground field = RoughField.of(RoughnessClass.E, Chance.stream(5, "ground"));
        Driven one = new Driven(
                BoomSpec.wide36(), field, DT_S, t -> Pose.of(SPEED_MPS * t, 3 * bump(t / 4), 0.5 * bump(t / 4)));
        Driven mirrored = new Driven(
                BoomSpec.wide36(),
                (xM, yM) -> field.heightM(xM, -yM),
                DT_S,
                t -> Pose.of(SPEED_MPS * t, -3 * bump(t / 4), -0.5 * bump(t / 4)));
        double most = 0;
        for (int n = 0; n < 6000; n++) {
            one.step();
            mirrored.step();
            for (int i = 0; i < 7; i++) {
                int j = 6 - i;
                assertThat(mirrored.boom.outletForwardM(j)).isCloseTo(one.boom.outletForwardM(i), within(1e-9));
                assertThat(mirrored.boom.outletForwardSpeedMps(j))
                        .isCloseTo(one.boom.outletForwardSpeedMps(i), within(1e-8));
                assertThat(mirrored.boom.outletHeightM(j)).isCloseTo(one.boom.outletHeightM(i), within(1e-9));
            }
            most = Math.max(most, Math.abs(one.boom.outletForwardM(0)));
        }
        assertThat(most).as("it sways").isGreaterThan(0.1);
    }

    @Test
    void turningRightLeavesTheBoomBehindAndBrakingThrowsItsTipsForward() {
        Driven turning =
                new Driven(BoomSpec.wide36(), Ground.level(), DT_S, t -> Pose.of(3 * t, 0, t < 2 ? 0 : 0.2 * (t - 2)));
        turning.drive(2.3);
        assertThat(turning.boom.outletForwardM(6)).as("right tip").isGreaterThan(0.5);
        assertThat(turning.boom.outletForwardM(0)).as("left tip").isLessThan(-0.5);
        assertThat(turning.boom.yawRad()).isLessThan(-0.02);

        Driven braking = new Driven(
                BoomSpec.wide36(),
                Ground.level(),
                DT_S,
                t -> Pose.straight(t < 2 ? 5 * t : 5 * t - 0.75 * (t - 2) * (t - 2), 0));
        braking.drive(2.4);
        assertThat(braking.boom.outletForwardM(0)).isGreaterThan(0.05);
        assertThat(braking.boom.outletForwardM(6)).isEqualTo(braking.boom.outletForwardM(0));
        assertThat(braking.boom.outletForwardM(3)).isZero();
    }

    @Test
    void aBoomWithoutSwayStaysWhereARigidOneIs() {
        Ground field = RoughField.of(RoughnessClass.D, Chance.stream(5, "ground"));
        Driven driven = new Driven(BoomSpec.rigid(18.3, 0.5), field, DT_S, t -> Pose.of(5 * t, 0, 0.1 * t));
        driven.drive(10);
        assertThat(driven.boom.outletForwardM(0)).isZero();
        assertThat(driven.boom.outletForwardSpeedMps(0)).isZero();
        assertThat(driven.boom.yawRad()).isZero();
    }

    @Test
    void partsThatDoNotMoveLeaveTheOthersTheirOwnFrequency() {
        SwaySpec stiffWings = new SwaySpec(0.75, 0.05, Double.POSITIVE_INFINITY, 0, 0, 1, 0);
        Driven yawing = new Driven(boomOf(stiffWings), Ground.level(), DT_S, t -> Pose.of(0, 0, 0.3 * bump(t)));
        yawing.drive(3.5);
        assertVibration(yawing, 0, 0.75, 0.05);
        SwaySpec stiffYaw = new SwaySpec(Double.POSITIVE_INFINITY, 0, 1.0, 0.05, 0, 1, 0);
        Driven bending = new Driven(boomOf(stiffYaw), Ground.level(), DT_S, t -> Pose.of(0, 0, 0.3 * bump(t)));
        bending.drive(3.5);
        assertVibration(bending, 6, 1.0, 0.05);
        assertThat(bending.boom.yawRad()).isZero();
    }

    @Test
    void heightsOfAStraightPassDoNotDependOnHowItIsGivenNorOnSway() {
        Ground field = RoughField.of(RoughnessClass.D, Chance.stream(5, "ground"));
        Driven posed = new Driven(BoomSpec.wide36(), field, DT_S, t -> Pose.straight(SPEED_MPS * t, 0));
        Chassis chassis = new Chassis(ChassisSpec.selfPropelled());
        Boom boom =
                new Boom(BoomSpec.wide36().withSway(SwaySpec.none()), new double[] {-18.3, -10, -2, 0, 2, 10, 18.3});
        for (int n = 0; n < 4000; n++) {
            posed.step();
            chassis.step(DT_S, field, SPEED_MPS * (n * DT_S), 0);
            boom.step(DT_S, chassis, field, SPEED_MPS * (n * DT_S), 0);
            for (int i = 0; i < 7; i++) {
                assertThat(posed.boom.outletHeightM(i)).isEqualTo(boom.outletHeightM(i));
            }
        }
    }

    @Test
    void aBoomThatLooksElsewhereHasTheHeightsOfATurnedField() {
        Ground field = RoughField.of(RoughnessClass.D, Chance.stream(5, "ground"));
        double turn = 2.1;
        Driven turned = new Driven(
                BoomSpec.wide36(),
                field,
                DT_S,
                t -> Pose.of(30 + SPEED_MPS * t * Math.cos(turn), 8 + SPEED_MPS * t * Math.sin(turn), turn));
        Ground turnedField = (xM, yM) -> field.heightM(
                30 + xM * Math.cos(turn) - yM * Math.sin(turn), 8 + xM * Math.sin(turn) + yM * Math.cos(turn));
        Driven straight = new Driven(BoomSpec.wide36(), turnedField, DT_S, t -> Pose.straight(SPEED_MPS * t, 0));
        for (int n = 0; n < 3000; n++) {
            turned.step();
            straight.step();
            for (int i = 0; i < 7; i++) {
                assertThat(turned.boom.outletHeightM(i)).isCloseTo(straight.boom.outletHeightM(i), within(1e-9));
                assertThat(turned.boom.outletForwardM(i)).isCloseTo(straight.boom.outletForwardM(i), within(1e-9));
            }
        }
    }

    @Test
    void impossibleSwayIsRefused() {
        assertThatThrownBy(() -> new SwaySpec(0, 0, 1, 0, 0, 1, 0))
                .hasMessage("yaw frequency of the boom, Hz, must be above 0, not 0.0");
        assertThatThrownBy(() -> new SwaySpec(1, 0, 1, 0, 0, 0, 0))
                .hasMessage("steering of the driver, s, must be above 0, not 0.0");
        assertThatThrownBy(() -> new SwaySpec(1, 0, 1, -0.1, 0, 1, 0))
                .hasMessage("fore-and-aft bending damping ratio of a wing must be 0 or above, not -0.1");
    }
}
