package evenfall.sim.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.sim.boom.Boom;
import evenfall.sim.boom.BoomSpec;
import evenfall.sim.ground.Ground;
import evenfall.sim.ground.SideSlope;
import evenfall.sim.vehicle.Chassis;
import evenfall.sim.vehicle.ChassisSpec;
import org.junit.jupiter.api.Test;

/** Path, chassis and boom together: two passes of a 36 m machine, slowed down to 2 m/s for the turn. */
class HeadlandWithBoomTest {

    private static final double DT_S = 0.005;

    private record Result(double mostForwardM, double leftTipM, double rightTipM, Boom boom) {}

    private static Result driven(Ground ground, BoomSpec spec, Headland headland) {
        Path path = Path.backAndForth(2, 150, 36, true, headland);
        Drive drive = new Drive(DrivePlan.slowInTurns(path, 5.0, 2.0, 0.7));
        Chassis chassis = new Chassis(ChassisSpec.selfPropelled());
        Boom boom = new Boom(spec, new double[] {-17.78, 17.78});
        double most = 0;
        double left = 0;
        double right = 0;
        while (drive.distanceM() < path.lengthM() - 10) {
            drive.step(DT_S);
            chassis.step(DT_S, ground, drive.pose());
            boom.step(DT_S, chassis, ground, drive.pose());
            most = Math.max(most, Math.max(Math.abs(boom.outletForwardM(0)), Math.abs(boom.outletForwardM(1))));
            left += (drive.speedAtM(-17.78) + boom.outletForwardSpeedMps(0)) * DT_S;
            right += (drive.speedAtM(17.78) + boom.outletForwardSpeedMps(1)) * DT_S;
        }
        return new Result(most, left, right, boom);
    }

    @Test
    void theTipsSwingInTheTurnAndAreStillAgainOnTheNextPass() {
        Result gentle = driven(Ground.level(), BoomSpec.wide36(), new Headland(9, 6));
        Result rash = driven(Ground.level(), BoomSpec.wide36(), new Headland(9, 0));
        assertThat(gentle.mostForwardM()).isBetween(0.1, 1.5);
        assertThat(rash.mostForwardM()).as("steering at once").isGreaterThan(1.3 * gentle.mostForwardM());
        assertThat(gentle.boom().outletForwardM(0)).isCloseTo(0, within(0.02));
        // A half turn to the right: the left tip goes π · 2 · 17.78 m further than the right one, swung or not.
        assertThat(gentle.leftTipM() - gentle.rightTipM()).isCloseTo(Math.PI * 2 * 17.78, within(0.1));
    }

    @Test
    void onASideSlopeTheBoltedBoomStaysParallelAllTheWayRound() {
        Result result = driven(SideSlope.everywhere(0.05), BoomSpec.rigid(18.3, 0.5), new Headland(9, 6));
        // Back on a straight, the slope now on the other hand; the chassis has come to rest on it.
        assertThat(result.boom().rollRad()).isCloseTo(-Math.atan(0.05), within(1e-9));
        assertThat(result.boom().outletHeightM(0)).isCloseTo(0.5, within(1e-9));
        assertThat(result.boom().outletHeightM(1)).isCloseTo(0.5, within(1e-9));
    }
}
