package evenfall.sim.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenfall.sim.vehicle.Pose;
import java.util.List;
import java.util.SplittableRandom;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** x forward along the first pass, y to the right of it, heading and curvature positive to the right. */
class PathTest {

    @Test
    void aStraightPathIsTheDistanceItselfToTheLastBit() {
        Path path = Path.straight();
        for (double distance : new double[] {0, 0.1, 1.0 / 3, 17.123456789, 19_999.9}) {
            Pose pose = path.poseAt(distance);
            assertThat(pose).isEqualTo(Pose.straight(distance, 0));
            assertThat(pose.groundX(-17.78)).isEqualTo(distance);
            assertThat(pose.groundY(-17.78)).isEqualTo(-17.78);
            assertThat(pose.groundX(1.6, -1.5)).isEqualTo(distance + 1.6);
            assertThat(path.curvaturePerM(distance)).isZero();
            assertThat(path.onPass(distance)).isTrue();
        }
        assertThat(path.lengthM()).isInfinite();
    }

    @ParameterizedTest
    @CsvSource({"6, 1.5", "9, -3.0", "12, 6.283185307179586"})
    void aBendIsACircle(double radius, double turn) {
        Path path = new Path.Builder()
                .straight(20)
                .bend(turn, radius, 0, false)
                .straight(10)
                .build();
        double side = Math.signum(turn);
        double arc = Math.abs(turn) * radius;
        for (double share : new double[] {0, 0.3, 0.77, 1}) {
            Pose pose = path.poseAt(20 + share * arc);
            double turned = share * Math.abs(turn);
            assertThat(pose.headingRad()).isCloseTo(side * turned, within(1e-12));
            assertThat(pose.xM()).isCloseTo(20 + radius * Math.sin(turned), within(1e-12));
            assertThat(pose.yM()).isCloseTo(side * radius * (1 - Math.cos(turned)), within(1e-12));
            // The right-hand side points to the centre of a bend to the right.
            assertThat(pose.groundX(side * radius)).isCloseTo(20, within(1e-12));
            assertThat(pose.groundY(side * radius)).isCloseTo(side * radius, within(1e-12));
        }
        assertThat(path.lengthM()).isCloseTo(30 + arc, within(1e-12));
        Pose beyond = path.poseAt(path.lengthM() + 5);
        Pose end = path.poseAt(path.lengthM());
        assertThat(Math.hypot(beyond.xM() - end.xM(), beyond.yM() - end.yM())).isCloseTo(5, within(1e-12));
        assertThat(beyond.headingRad()).isEqualTo(end.headingRad());
    }

    @Test
    void aBendWithRunInsGoesWhereAnIntegratorOfItsCurvatureGoes() {
        Path path = new Path.Builder().bend(2.5, 7, 4, false).straight(5).build();
        OrdinaryDifferentialEquation equation = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 3;
            }

            @Override
            public double[] computeDerivatives(double s, double[] q) {
                return new double[] {Math.cos(q[2]), Math.sin(q[2]), path.curvaturePerM(s)};
            }
        };
        double[] state = {0, 0, 0};
        double at = 0;
        // From kink to kink of the curvature: run-in 4, arc 2.5·7 − 4, run-in 4.
        for (double to : new double[] {1.7, 4, 11.1, 17.5, 20.2, 21.5}) {
            state = new DormandPrince853Integrator(1e-6, 0.2, 1e-13, 1e-13)
                    .integrate(equation, new ODEState(at, state), to)
                    .getPrimaryState();
            at = to;
            Pose pose = path.poseAt(to);
            assertThat(pose.xM()).isCloseTo(state[0], within(1e-9));
            assertThat(pose.yM()).isCloseTo(state[1], within(1e-9));
            assertThat(pose.headingRad()).isCloseTo(state[2], within(1e-9));
        }
        assertThat(path.poseAt(21.5).headingRad()).isCloseTo(2.5, within(1e-12));
    }

    @Test
    void everyHeadlandTurnEndsOnTheNextPassLookingBack() {
        SplittableRandom random = new SplittableRandom(11);
        for (int trial = 0; trial < 300; trial++) {
            double radius = 4 + 8 * random.nextDouble();
            double runIn = trial % 3 == 0 ? 0 : 6 * random.nextDouble();
            double width = 1 + 45 * random.nextDouble();
            boolean right = random.nextBoolean();
            Path path = Path.backAndForth(2, 100, width, right, new Headland(radius, runIn));
            double turnEnd = path.lengthM() - 100;
            Pose end = path.poseAt(turnEnd);
            String what = "seed 11 trial " + trial + ": radius " + radius + ", run-in " + runIn + ", width " + width;
            assertThat(end.xM()).as(what).isCloseTo(100, within(1e-6));
            assertThat(end.yM()).as(what).isCloseTo(right ? width : -width, within(1e-6));
            assertThat(Math.cos(end.headingRad())).as(what).isCloseTo(-1, within(1e-12));
            for (double s = 0; s < path.lengthM(); s += 0.25) {
                assertThat(Math.abs(path.curvaturePerM(s))).as(what).isLessThanOrEqualTo(1 / radius * (1 + 1e-12));
                Pose here = path.poseAt(s);
                Pose next = path.poseAt(s + 0.01);
                assertThat(Math.hypot(next.xM() - here.xM(), next.yM() - here.yM()))
                        .as("%s: no jump at %f m", what, s)
                        .isCloseTo(0.01, within(1e-6));
            }
        }
    }

    @Test
    void aNextPassTooNearForAHalfCircleIsReachedByAWidening() {
        // cos α = (D + 2R)/(4R), by hand for D = R: cos α = 3/4, α = 41.41°; the way is R(π + 4α).
        double radius = 8;
        Path path = Path.backAndForth(2, 50, radius, true, new Headland(radius, 0));
        double alpha = Math.acos(0.75);
        assertThat(path.lengthM() - 100).isCloseTo(radius * (Math.PI + 4 * alpha), within(1e-9));
        double leftmost = 0;
        for (double s = 50; s < path.lengthM() - 50; s += 0.01) {
            leftmost = Math.min(leftmost, path.poseAt(s).yM());
        }
        assertThat(leftmost).as("it swings out to the other side first").isLessThan(-1);
    }

    @Test
    void passesGoBackAndForthBesideEachOther() {
        Path path = Path.backAndForth(4, 200, 36, true, new Headland(9, 5));
        double turn = (path.lengthM() - 800) / 3;
        for (int i = 0; i < 4; i++) {
            double start = i * (200 + turn);
            Pose middle = path.poseAt(start + 100);
            assertThat(middle.xM()).isCloseTo(100, within(1e-6));
            assertThat(middle.yM()).isCloseTo(36.0 * i, within(1e-6));
            assertThat(path.onPass(start + 100)).isTrue();
            assertThat(path.onPass(start + 200 + turn / 2)).isEqualTo(false);
        }
        assertThat(path.passEdgesM()).hasSize(7);
        assertThat(path.passEdgesM().get(0)).isCloseTo(200, within(1e-9));
        assertThat(path.passEdgesM().get(1)).isCloseTo(200 + turn, within(1e-6));
        assertThat(path.onPass(path.lengthM() + 1)).isFalse();
    }

    @Test
    void impossiblePathsAreRefused() {
        assertThatThrownBy(() -> new Headland(0, 1)).hasMessage("turning radius, m, must be above 0, not 0.0");
        assertThatThrownBy(() -> new Headland(5, -1)).hasMessage("run-in of a turn, m, must be 0 or above, not -1.0");
        Headland headland = new Headland(5, 0);
        assertThatThrownBy(() -> Path.backAndForth(0, 1, 1, true, headland))
                .hasMessage("passes must be at least 1, not 0");
        assertThatThrownBy(() -> Path.backAndForth(2, 1, -3, true, headland))
                .hasMessage("width of a pass, m, must be above 0, not -3.0");
        assertThatThrownBy(() -> new Path.Builder().straight(0))
                .hasMessage("length of a straight, m, must be above 0, not 0.0");
        assertThatThrownBy(() ->
                        new Path.Builder().straight(Double.POSITIVE_INFINITY).straight(1))
                .hasMessage("nothing comes after a straight without end");
        assertThatThrownBy(() -> new Path.Builder().build()).hasMessage("a path needs at least one stretch");
        assertThat(List.copyOf(Path.straight().passEdgesM())).isEmpty();
    }
}
