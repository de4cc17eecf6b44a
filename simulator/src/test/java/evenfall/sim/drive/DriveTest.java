package evenfall.sim.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenfall.sim.vehicle.Pose;
import java.util.List;
import org.junit.jupiter.api.Test;

class DriveTest {

    private static final double DT_S = 0.005;

    @Test
    void brakingTakesTheWayThatItsAccelerationSays() {
        // From 6 to 2 m/s at 0.8 m/s²: 5 s and (36 − 4)/1.6 = 20 m.
        Drive drive = new Drive(new DrivePlan(Path.straight(), 6, 0.8, List.of(SpeedChange.atS(10, 2))));
        while (drive.timeS() < 10 + 5) {
            drive.step(DT_S);
            assertThat(drive.accelerationMps2()).isCloseTo(drive.timeS() > 10.001 ? -0.8 : 0, within(1e-9));
        }
        assertThat(drive.speedMps()).isCloseTo(2, within(1e-9));
        assertThat(drive.distanceM()).isCloseTo(60 + 20, within(1e-9));
        drive.step(DT_S);
        drive.step(DT_S);
        assertThat(drive.accelerationMps2()).isZero();
        assertThat(drive.pose()).isEqualTo(Pose.straight(drive.distanceM(), 0));
        assertThat(drive.yawRateRadps()).isZero();
    }

    @Test
    void changesComeInTurnByTimeOrByPlace() {
        DrivePlan plan = new DrivePlan(
                Path.straight(), 4, 1, List.of(SpeedChange.atM(20, 5), SpeedChange.atS(3, 6), SpeedChange.atM(60, 0)));
        Drive drive = new Drive(plan);
        double fastest = 0;
        for (int i = 0; i < 6000; i++) {
            drive.step(DT_S);
            if (drive.distanceM() < 20) {
                assertThat(drive.speedMps()).isEqualTo(4);
            }
            fastest = Math.max(fastest, drive.speedMps());
        }
        assertThat(fastest).isEqualTo(6);
        assertThat(drive.speedMps()).isZero();
        assertThat(drive.distanceM()).isCloseTo(60 + 18, within(0.05));
    }

    @Test
    void theTipsOfARigidBoomTravelTheirOwnCircles() {
        // A full circle of radius 10 m: the outer tip goes 2π(R + w), the centre 2πR, the inner one 2π(R − w).
        double radius = 10;
        double half = 6;
        Path path = new Path.Builder().bend(7, radius, 0, true).build();
        Drive drive = new Drive(new DrivePlan(path, 2.5, 1, List.of()));
        double[] right = {-half, 0, half, 14};
        double[] bySpeed = new double[right.length];
        double[] byPlace = new double[right.length];
        int steps = 10_000;
        double dt = 2 * Math.PI * radius / 2.5 / steps;
        Pose before = drive.pose();
        for (int i = 0; i < steps; i++) {
            drive.step(dt);
            Pose now = drive.pose();
            for (int k = 0; k < right.length; k++) {
                bySpeed[k] += drive.speedAtM(right[k]) * dt;
                byPlace[k] += Math.hypot(
                        now.groundX(right[k]) - before.groundX(right[k]),
                        now.groundY(right[k]) - before.groundY(right[k]));
            }
            assertThat(drive.yawRateRadps()).isCloseTo(0.25, within(1e-12));
            before = now;
        }
        for (int k = 0; k < right.length; k++) {
            double circle = 2 * Math.PI * (radius - right[k]);
            assertThat(bySpeed[k]).as("backwards inside the centre").isCloseTo(circle, within(1e-6));
            assertThat(byPlace[k]).isCloseTo(Math.abs(circle), within(1e-4));
        }
        assertThat(drive.pose().xM()).isCloseTo(0, within(1e-6));
        assertThat(drive.pose().yM()).isCloseTo(0, within(1e-6));
    }

    @Test
    void aDriverWhoSlowsDownForTheTurnEntersItAtThatSpeed() {
        Path path = Path.backAndForth(3, 120, 24, false, new Headland(8, 4));
        Drive drive = new Drive(DrivePlan.slowInTurns(path, 5.5, 2.0, 0.7));
        double slowest = 9;
        double fastestInTurn = 0;
        while (drive.distanceM() < path.lengthM() - 20) {
            drive.step(DT_S);
            slowest = Math.min(slowest, drive.speedMps());
            if (!drive.onPass()) {
                fastestInTurn = Math.max(fastestInTurn, drive.speedMps());
            }
        }
        assertThat(slowest).isEqualTo(2.0);
        assertThat(fastestInTurn).as("a step later than exact").isBetween(2.0, 2.0 + 2 * 0.7 * DT_S);
        assertThat(drive.speedMps()).as("and fast again on the last pass").isEqualTo(5.5);
        assertThat(drive.pose().yM()).isCloseTo(-48, within(1e-5));
    }

    @Test
    void sectionsGoOffInTheHeadlandAndOnAfterIt() {
        Path path = Path.backAndForth(2, 50, 36, true, new Headland(9, 0));
        Drive drive = new Drive(DrivePlan.slowInTurns(path, 5, 2, 1));
        SectionPlan.Hand hand = new SectionPlan.Hand(SectionPlan.offInHeadland(path, 7, 1.0, -2.0));
        double turnEnd = path.lengthM() - 50;
        while (drive.distanceM() < path.lengthM() + 5) {
            drive.step(DT_S);
            // A switch a millionth of a millimetre ahead is thrown: sums of steps fall short of round numbers.
            double at = drive.distanceM() + 1e-9;
            boolean off = (at >= 51 && at < turnEnd - 2) || at >= path.lengthM() + 1;
            assertThat(hand.maskAt(drive)).as("at %f m", at).isEqualTo(off ? 0 : 0x7f);
        }
    }

    @Test
    void sectionsAreSwitchedByHandAtMomentsAndPlaces() {
        Drive drive = new Drive(new DrivePlan(Path.straight(), 5, 1, List.of()));
        SectionPlan.Hand hand = new SectionPlan.Hand(SectionPlan.of(
                64,
                List.of(
                        SectionPlan.Switch.atS(1, 0b101),
                        SectionPlan.Switch.atM(10, 0b1),
                        SectionPlan.Switch.atS(1.5, 0))));
        for (int i = 1; i <= 800; i++) {
            drive.step(DT_S);
            long due = i < 200 ? -1L : i < 400 ? 0b101 : 0;
            assertThat(hand.maskAt(drive)).as("step %d", i).isEqualTo(due);
        }
    }

    @Test
    void impossiblePlansAreRefused() {
        assertThatThrownBy(() -> new DrivePlan(Path.straight(), -1, 1, List.of()))
                .hasMessage("speed at the start, m/s, must be 0 or above, not -1.0");
        assertThatThrownBy(() -> new DrivePlan(Path.straight(), 1, 0, List.of()))
                .hasMessage("acceleration, m/s², must be above 0, not 0.0");
        assertThatThrownBy(() -> SpeedChange.atS(1, Double.NaN)).hasMessage("speed, m/s, must be 0 or above, not NaN");
        assertThatThrownBy(() -> DrivePlan.slowInTurns(Path.straight(), 2, 3, 1))
                .hasMessage("speed in turns, m/s, must be above 0 and at most 2.0, not 3.0");
        assertThatThrownBy(() -> SectionPlan.allOf(65)).hasMessage("sections must be 1 to 64, not 65");
    }
}
