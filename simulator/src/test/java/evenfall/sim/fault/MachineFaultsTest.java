package evenfall.sim.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.sim.boom.Boom;
import evenfall.sim.boom.BoomSpec;
import evenfall.sim.ground.Ground;
import evenfall.sim.vehicle.Chassis;
import evenfall.sim.vehicle.ChassisSpec;
import org.junit.jupiter.api.Test;

/** The machine's troubles on the real boom and chassis, a 36 m boom over long waves at 5 m/s. Invented. */
class MachineFaultsTest {
    private static final double DT_S = 0.005;
    private static final Ground WAVES =
            (x, y) -> 0.3 * StrictMath.sin(x / 30) * StrictMath.sin(0.15 * y + 0.5) + 0.02 * y;
    private static final Ground LEVEL = (x, y) -> 0;

    private final Boom boom = new Boom(BoomSpec.wide36().withSetHeightM(0.5), new double[] {-17, -9, 0, 9, 17});
    private final Chassis chassis = new Chassis(ChassisSpec.selfPropelled());
    private final MachineTrouble trouble = MachineTrouble.of(boom, chassis);
    private double xM;

    private void drive(double seconds, Ground ground) {
        for (int i = 0; i < Math.round(seconds / DT_S); i++) {
            xM += 5 * DT_S;
            chassis.step(DT_S, ground, xM, 0);
            boom.step(DT_S, chassis, ground, xM, 0);
        }
    }

    @Test
    void aWingThatIsStuckKeepsItsTiltAndTheOtherGoesOn() {
        drive(3, WAVES);
        trouble.slowWing(true, 1);
        double left = boom.leftTiltMpm();
        double right = boom.rightTiltMpm();
        drive(3, WAVES);
        assertThat(boom.leftTiltMpm()).isEqualTo(left);
        assertThat(boom.rightTiltMpm()).isNotEqualTo(right);
        trouble.slowWing(true, 0);
        drive(4, WAVES);
        assertThat(boom.leftTiltMpm()).isNotEqualTo(left);
    }

    @Test
    void aDeadControlMovesNothingAndGivesWayToASlowOne() {
        drive(3, WAVES);
        trouble.slowControl(0.7);
        trouble.stopControl(true);
        double left = boom.leftTiltMpm();
        double lift = boom.liftM();
        drive(3, WAVES);
        assertThat(boom.leftTiltMpm()).isEqualTo(left);
        assertThat(boom.liftM()).isEqualTo(lift);
        trouble.stopControl(false);
        drive(4, WAVES);
        assertThat(boom.leftTiltMpm()).isNotEqualTo(left);
    }

    @Test
    void aSlowControlFollowsWorse() {
        double whole = unevenness();
        trouble.slowControl(0.9);
        assertThat(unevenness()).isGreaterThan(1.1 * whole);
        trouble.slowControl(0);
        drive(5, WAVES);
        assertThat(unevenness()).isCloseTo(whole, within(0.3 * whole));
    }

    private double unevenness() {
        double sum = 0;
        for (int i = 0; i < 400; i++) {
            drive(0.05, WAVES);
            sum += Math.abs(boom.outletHeightM(0) - 0.5) + Math.abs(boom.outletHeightM(4) - 0.5);
        }
        return sum / 800;
    }

    @Test
    void aBoomThatIsSetWrongGoesThereAndComesBack() {
        drive(5, LEVEL);
        double before = boom.outletHeightM(2);
        trouble.setWrong(0.25);
        drive(10, LEVEL);
        assertThat(boom.outletHeightM(2) - before).isCloseTo(0.25, within(0.03));
        assertThat(boom.outletHeightM(0) - before).isCloseTo(0.25, within(0.05));
        trouble.setWrong(0);
        drive(10, LEVEL);
        assertThat(boom.outletHeightM(2)).isCloseTo(before, within(0.03));
    }

    @Test
    void aSoftTyreLetsTheMachineLean() {
        drive(5, LEVEL);
        assertThat(chassis.rollMpm()).isCloseTo(0, within(1e-12));
        trouble.softenTyre(2, 0.08);
        drive(10, LEVEL);
        double track = ChassisSpec.selfPropelled().trackM();
        assertThat(chassis.rollMpm()).as("the right side is up").isCloseTo(0.08 / 2 / track, within(1e-4));
        assertThat(chassis.heaveM()).isCloseTo(-0.02, within(1e-4));
        assertThat(chassis.pitchMpm()).isPositive();
        trouble.softenTyre(2, 0);
        drive(10, LEVEL);
        assertThat(chassis.rollMpm()).isCloseTo(0, within(1e-6));
    }
}
