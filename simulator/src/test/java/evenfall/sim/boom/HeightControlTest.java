package evenfall.sim.boom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.sim.ground.Ground;
import evenfall.sim.vehicle.Chassis;
import evenfall.sim.vehicle.ChassisSpec;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The wheels stay on level ground; the ground under a wing jumps up by 0.30 m at 10 m. */
class HeightControlTest {

    private static final double DT_S = 0.01;
    private static final double SPEED_MPS = 5.0;
    private static final double JUMP_M = 0.30;

    private static final Ground JUMP_UNDER_THE_RIGHT_WING = (xM, yM) -> xM >= 10 && yM > 5 ? JUMP_M : 0.0;

    private final Chassis chassis = new Chassis(ChassisSpec.selfPropelled());
    private int steps;

    private double step(Boom boom, Ground ground) {
        double x = SPEED_MPS * steps * DT_S;
        chassis.step(DT_S, ground, x, 0);
        boom.step(DT_S, chassis, ground, x, 0);
        steps++;
        return x;
    }

    private static Boom boom(HeightControlSpec control) {
        return new Boom(
                BoomSpec.wide36().withControl(control).withSoil(SoilContactSpec.none()),
                new double[] {-17.78, 0, 17.78});
    }

    @Test
    void aWingAnswersAfterItsAveragingAndItsDelay() {
        HeightControlSpec control = BoomSpec.wide36().control();
        Boom boom = boom(control);
        double jumpedS = Double.NaN;
        double movedS = Double.NaN;
        for (int i = 0; i < 500 && Double.isNaN(movedS); i++) {
            double x = step(boom, JUMP_UNDER_THE_RIGHT_WING);
            if (x >= 10 && Double.isNaN(jumpedS)) {
                jumpedS = i * DT_S;
            }
            if (boom.rightTiltMpm() != 0) {
                movedS = i * DT_S;
            }
        }
        // The average 0.30·(1 − exp(−t/0.3)) passes the dead band of 0.05 at t = −0.3·ln(1 − 1/6).
        double averagedS = -0.3 * Math.log(1 - 0.05 / JUMP_M);
        assertThat(movedS - jumpedS).isCloseTo(averagedS + 0.4, within(2.1 * DT_S));
        assertThat(boom.leftTiltMpm()).as("the other wing saw nothing").isZero();
        assertThat(boom.liftM()).as("nor did the centre").isZero();
    }

    @Test
    void aWingRisesNoFasterThanItsSlewAndComesToRestWithinTheDeadBand() {
        HeightControlSpec control =
                new HeightControlSpec(List.of(9.0, 16.5), 0.3, 0.4, 0.05, 0.8, 0.15, 0.3, 0.25, 0.8);
        Boom boom = boom(control);
        double wingM = 18.3 - 2.5;
        double before = 0;
        double fastest = 0;
        for (int i = 0; i < 3000; i++) {
            step(boom, JUMP_UNDER_THE_RIGHT_WING);
            fastest = Math.max(fastest, Math.abs(boom.rightTiltMpm() - before) / DT_S * wingM);
            before = boom.rightTiltMpm();
        }
        assertThat(fastest).isCloseTo(0.15, within(1e-9));
        double seen = (boom.heightAtM(9.0) + boom.heightAtM(16.5)) / 2;
        assertThat(seen).isBetween(0.45 - 1e-3, 0.55 + 1e-3);
        assertThat(seen).isCloseTo(0.45, within(0.02));
    }

    @Test
    void withinTheDeadBandNothingMoves() {
        Boom boom = boom(BoomSpec.wide36().control());
        for (int i = 0; i < 1000; i++) {
            step(boom, (xM, yM) -> xM >= 10 && yM > 5 ? 0.049 : 0.0);
        }
        assertThat(boom.rightTiltMpm()).isZero();
    }

    @Test
    void theCentreIsLiftedOverGroundThatRisesUnderItAlone() {
        Boom boom = boom(BoomSpec.wide36().control());
        for (int i = 0; i < 2000; i++) {
            step(boom, (xM, yM) -> xM >= 10 && Math.abs(yM) < 0.5 ? 0.2 : 0.0);
        }
        assertThat(boom.liftM())
                .as("the error up to the dead band, 0.15 m, and little more")
                .isBetween(0.14, 0.17);
        assertThat(boom.leftTiltMpm()).as("and the wings are let down for it").isNegative();
        assertThat(boom.rightTiltMpm()).isCloseTo(boom.leftTiltMpm(), within(1e-12));
    }

    @Test
    void travelEndsWhereItEnds() {
        HeightControlSpec control =
                new HeightControlSpec(List.of(-9.0, 0.0, 9.0), 0.3, 0.4, 0.05, 0.8, 0.5, 0.3, 0.02, 0.1);
        Boom boom = boom(control);
        for (int i = 0; i < 3000; i++) {
            step(boom, (xM, yM) -> xM >= 10 && Math.abs(yM) != 1.5 && (yM > 5 || Math.abs(yM) < 0.5) ? 1.5 : 0.0);
        }
        assertThat(boom.rightTiltMpm()).isEqualTo(0.02);
        assertThat(boom.liftM()).isEqualTo(0.1);
    }
}
