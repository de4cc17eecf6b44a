package evenfall.sim.vehicle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenfall.sim.chance.Chance;
import evenfall.sim.ground.Ground;
import evenfall.sim.ground.Knoll;
import evenfall.sim.ground.RoughField;
import evenfall.sim.ground.RoughnessClass;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;

class ChassisTest {

    private static final ChassisSpec SPEC = ChassisSpec.selfPropelled();
    private static final double SPEED_MPS = 5.5;

    @Test
    void onLevelGroundNothingMoves() {
        Chassis chassis = new Chassis(SPEC);
        for (int i = 0; i < 500; i++) {
            chassis.step(0.01, Ground.level(), SPEED_MPS * i * 0.01, 0);
        }
        assertThat(chassis.heaveM()).isZero();
        assertThat(chassis.rollRad()).isZero();
        assertThat(chassis.pitchRad()).isZero();
        assertThat(chassis.hangHeightM()).isEqualTo(SPEC.hangHeightM());
    }

    @Test
    void onAPlaneItStandsParallelToThePlane() {
        Ground plane = (xM, yM) -> 3 + 0.04 * xM + 0.07 * yM;
        Chassis chassis = new Chassis(SPEC);
        chassis.place(plane, 20, -1);
        assertThat(chassis.rollMpm()).isCloseTo(0.07, within(1e-12));
        assertThat(chassis.rollRad()).isCloseTo(Math.atan(0.07), within(1e-12));
        assertThat(chassis.pitchMpm()).isCloseTo(0.04, within(1e-12));
        // The hanging point is over (20, −1), the place of the machine.
        assertThat(chassis.hangHeightM()).isCloseTo(3 + 0.8 - 0.07 + SPEC.hangHeightM(), within(1e-12));

        for (int i = 1; i <= 6000; i++) {
            chassis.step(0.01, plane, 20 + SPEED_MPS * i * 0.01, -1);
        }
        assertThat(chassis.rollMpm()).isCloseTo(0.07, within(1e-12));
        assertThat(chassis.hangHeightM())
                .as("after the jerk of starting has died away")
                .isCloseTo(3 + 0.04 * (20 + SPEED_MPS * 60) - 0.07 + SPEC.hangHeightM(), within(1e-9));
        assertThat(chassis.hangVerticalSpeedMps()).isCloseTo(0.04 * SPEED_MPS, within(1e-9));
    }

    /**
     * The same machine written as forces at four wheels, by Newton and Euler, and integrated: mass 15 t,
     * spring and damper at each wheel between the body's corner and the ground under the tyre.
     */
    @Test
    void overAKnollItMovesAsForcesAtFourWheelsWouldMoveIt() {
        Ground ground = new Knoll(20, 2, 9, 0.5);
        double dt = 0.0025;
        OrdinaryDifferentialEquation equation = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 6;
            }

            @Override
            public double[] computeDerivatives(double t, double[] y) {
                double force = 0;
                double rollMoment = 0;
                double pitchMoment = 0;
                for (int wheel = 0; wheel < 4; wheel++) {
                    double side = wheel % 2 == 0 ? -SPEC.trackM() / 2 : SPEC.trackM() / 2;
                    double ahead = wheel < 2 ? SPEC.wheelbaseM() / 2 : -SPEC.wheelbaseM() / 2;
                    double x = SPEED_MPS * t + SPEC.hangBehindRearAxleM() + SPEC.wheelbaseM() / 2 + ahead;
                    double squeeze = patch(x, side) - (y[0] + side * y[1] + ahead * y[2]);
                    double speed = (patch(x + 1e-5, side) - patch(x - 1e-5, side)) / 2e-5 * SPEED_MPS
                            - (y[3] + side * y[4] + ahead * y[5]);
                    double corner = SPEC.wheelStiffnessNpm() * squeeze + SPEC.wheelDampingNspm() * speed;
                    force += corner;
                    rollMoment += corner * side;
                    pitchMoment += corner * ahead;
                }
                return new double[] {
                    y[3],
                    y[4],
                    y[5],
                    force / SPEC.massKg(),
                    rollMoment / SPEC.rollInertiaKgm2(),
                    pitchMoment / SPEC.pitchInertiaKgm2()
                };
            }

            private double patch(double x, double y) {
                double quarter = SPEC.contactLengthM() / 4;
                return 0.5 * (ground.heightM(x - quarter, y) + ground.heightM(x + quarter, y));
            }
        };
        // Stopped in the middle of it, not after it has died away.
        for (double stop : new double[] {2.6, 3.4, 4.1}) {
            Chassis moving = new Chassis(SPEC);
            for (int i = 0; i <= Math.round(stop / dt); i++) {
                moving.step(dt, ground, SPEED_MPS * i * dt, 0);
            }
            double[] end = new DormandPrince853Integrator(1e-7, 0.01, 1e-11, 1e-11)
                    .integrate(equation, new ODEState(0, new double[6]), stop)
                    .getPrimaryState();
            assertThat(Math.abs(end[0])).as("something happens").isGreaterThan(1e-3);
            assertThat(moving.heaveM()).isCloseTo(end[0], within(1e-5));
            assertThat(moving.rollMpm()).isCloseTo(end[1], within(1e-5));
            assertThat(moving.pitchMpm()).isCloseTo(end[2], within(1e-5));
        }
    }

    @Test
    void theErrorFallsWithTheSquareOfTheStep() {
        Ground ground = new Knoll(20, 1, 9, 0.5);
        double exact = heaveAfter(ground, 0.0005);
        double coarse = Math.abs(heaveAfter(ground, 0.02) - exact);
        double fine = Math.abs(heaveAfter(ground, 0.01) - exact);
        assertThat(coarse).isBetween(1e-7, 1e-3);
        assertThat(coarse / fine).isBetween(3.3, 4.7);
    }

    private static double heaveAfter(Ground ground, double dtS) {
        Chassis chassis = new Chassis(SPEC);
        for (int i = 0; i <= Math.round(3.0 / dtS); i++) {
            chassis.step(dtS, ground, SPEED_MPS * i * dtS, 0);
        }
        return chassis.hangHeightM() + chassis.rollMpm();
    }

    @Test
    void thePresetsModesAreWhereItsDocumentationSays() {
        // √(4k/m)/2π and so on, by hand: 1.743, 2.179, 2.070 Hz; damping c-sums over 2ω.
        assertThat(SPEC.heaveHz()).isCloseTo(1.743, within(0.001));
        assertThat(SPEC.rollHz()).isCloseTo(2.179, within(0.001));
        assertThat(SPEC.pitchHz()).isCloseTo(2.070, within(0.001));
    }

    @Test
    void theSameGroundGivesTheSameMotionToTheLastBit() {
        Ground ground = RoughField.of(RoughnessClass.D, Chance.stream(4, "ground"));
        Chassis one = new Chassis(SPEC);
        Chassis other = new Chassis(SPEC);
        double travelled = 0;
        for (int i = 0; i < 2000; i++) {
            travelled += 0.055;
            one.step(0.01, ground, travelled, 0);
            other.step(0.01, ground, travelled, 0);
        }
        assertThat(Double.doubleToLongBits(one.hangHeightM())).isEqualTo(Double.doubleToLongBits(other.hangHeightM()));
        assertThat(Double.doubleToLongBits(one.rollRad())).isEqualTo(Double.doubleToLongBits(other.rollRad()));
    }

    @Test
    void impossibleMachinesAreRefused() {
        assertThatThrownBy(() -> new ChassisSpec(0, 1, 1, 1, 1, 1, 1, 1, 1, 1))
                .hasMessage("mass, kg, must be above 0, not 0.0");
        assertThatThrownBy(() -> new ChassisSpec(1, 1, 1, 1, 1, 1, -1, 1, 1, 1))
                .hasMessage("wheel damping, N·s/m, must be 0 or above, not -1.0");
        assertThatThrownBy(() -> new ChassisSpec(1, 1, 1, 1, 1, 1, 1, 1, Double.NaN, 1))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
