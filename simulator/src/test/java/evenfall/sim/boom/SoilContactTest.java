package evenfall.sim.boom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenfall.sim.chance.Chance;
import evenfall.sim.ground.CompositeGround;
import evenfall.sim.ground.Crossing;
import evenfall.sim.ground.Ground;
import evenfall.sim.ground.HeadlandBank;
import evenfall.sim.ground.Knoll;
import evenfall.sim.ground.RoughField;
import evenfall.sim.ground.RoughnessClass;
import evenfall.sim.vehicle.Chassis;
import evenfall.sim.vehicle.ChassisSpec;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A wing that strikes the ground: 36 m boom, outlets from tip to tip, 5.5 m/s. */
class SoilContactTest {

    private static final double SPEED_MPS = 5.5;

    private static final class Driven {
        final Chassis chassis = new Chassis(ChassisSpec.selfPropelled());
        final Boom boom;
        final Ground ground;
        final double dtS;
        double deepestM;
        double longestDeepS;
        private double deepS;
        int step;

        Driven(BoomSpec spec, Ground ground, double dtS) {
            this.boom = new Boom(spec, new double[] {-17.78, -14.35, -10.4, 0, 10.4, 14.35, 17.78});
            this.ground = ground;
            this.dtS = dtS;
        }

        /** Also keeps how deep an outlet was and for how long one was 5 cm deep or more. */
        void drive(double seconds) {
            for (int i = 0; i < Math.round(seconds / dtS); i++) {
                chassis.step(dtS, ground, SPEED_MPS * step * dtS, 0);
                boom.step(dtS, chassis, ground, SPEED_MPS * step * dtS, 0);
                step++;
                double lowest = 0;
                for (int k = 0; k < 7; k++) {
                    lowest = Math.min(lowest, boom.outletHeightM(k));
                }
                deepestM = Math.max(deepestM, -lowest);
                deepS = lowest < -0.05 ? deepS + dtS : 0;
                longestDeepS = Math.max(longestDeepS, deepS);
            }
        }
    }

    private static BoomSpec free() {
        return BoomSpec.wide36().withControl(HeightControlSpec.none());
    }

    /** A bank of 0.9 m under the right wing only, met on 4 m, for 30 m. */
    private static Ground bank() {
        return new HeadlandBank(Crossing.at(30).between(12, 30, 3), 0.9, 4, 30);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.002, 0.005, 0.010, 0.020})
    void aWingThatStrikesABankRidesOnItAndComesOutAgain(double dtS) {
        Driven carried = new Driven(free(), bank(), dtS);
        carried.drive(9);
        assertThat(carried.boom.inSoil(5)).as("on the bank").isTrue();
        assertThat(carried.boom.inSoil(1)).as("the other wing").isFalse();
        assertThat(carried.boom.outletHeightM(5)).isBetween(-0.02, 0.0);
        assertThat(carried.boom.outletVerticalSpeedMps(5)).isCloseTo(0, within(0.02));
        assertThat(carried.boom.rightBendM()).as("bent up").isGreaterThan(0.05);
        assertThat(carried.boom.rollRad()).as("and rolled").isGreaterThan(0.001);
        assertThat(carried.deepestM).isLessThan(0.12);
        carried.drive(20);
        for (int i = 0; i < 7; i++) {
            assertThat(carried.boom.outletHeightM(i)).isCloseTo(0.5, within(0.02));
        }

        Driven unhindered = new Driven(free().withSoil(SoilContactSpec.none()), bank(), dtS);
        unhindered.drive(9);
        assertThat(unhindered.boom.outletHeightM(6)).as("without soil").isLessThan(-0.3);
    }

    @Test
    void whatDoesNotTouchTheGroundDoesNotFeelIt() {
        Ground field = RoughField.of(RoughnessClass.C, Chance.stream(3, "ground"));
        Driven with = new Driven(BoomSpec.wide36(), field, 0.01);
        Driven without = new Driven(BoomSpec.wide36().withSoil(SoilContactSpec.none()), field, 0.01);
        for (int n = 0; n < 40; n++) {
            with.drive(1);
            without.drive(1);
            for (int i = 0; i < 7; i++) {
                assertThat(with.boom.outletHeightM(i)).isEqualTo(without.boom.outletHeightM(i));
            }
        }
        assertThat(with.deepestM).isZero();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.005, 0.010, 0.020})
    void onTheRoughestFieldItIsNeverDeepForLongNorThrownIntoTheAir(double dtS) {
        for (long seed = 1; seed <= 3; seed++) {
            Ground field = new CompositeGround(List.of(
                    RoughField.of(RoughnessClass.E, Chance.stream(seed, "ground")),
                    new Knoll(60, 14, 12, 1.2),
                    new Knoll(120, -16, 10, 1.0),
                    new Knoll(180, 0, 20, 1.0)));
            Driven driven = new Driven(BoomSpec.wide36().withSetHeightM(0.35), field, dtS);
            double highest = 0;
            for (int n = 0; n < 60; n++) {
                driven.drive(1);
                highest = Math.max(highest, Math.abs(driven.boom.outletHeightM(0)));
                highest = Math.max(highest, Math.abs(driven.boom.outletHeightM(6)));
            }
            assertThat(driven.deepestM).as("seed %d", seed).isBetween(0.01, 0.15);
            assertThat(driven.longestDeepS).as("seed %d", seed).isLessThan(0.4);
            assertThat(highest).as("seed %d", seed).isLessThan(2.5);
        }
    }

    @Test
    void aBoomThatIsDroppedComesToRestAndDoesNotBounceHigher() {
        // The ground comes up under the wings within half a second and stays: then nothing drives the boom.
        Chassis chassis = new Chassis(ChassisSpec.selfPropelled());
        Boom boom = new Boom(free(), new double[] {-10.4, 10.4});
        double last = Double.POSITIVE_INFINITY;
        double peak = 0;
        for (int i = 0; i < 4000; i++) {
            double up = 0.6 * Math.min(1, i / 50.0);
            Ground raised = (xM, yM) -> Math.abs(yM) > 5 ? up : 0;
            chassis.step(0.01, raised, 0, 0);
            boom.step(0.01, chassis, raised, 0, 0);
            if (i < 50) {
                continue;
            }
            double height = boom.outletHeightM(1);
            assertThat(height).isEqualTo(boom.outletHeightM(0));
            if (height > 0) {
                peak = Math.max(peak, height);
            } else if (peak > 0) {
                assertThat(peak).as("each bounce is lower").isLessThan(last);
                last = peak;
                peak = 0;
            }
        }
        assertThat(last).as("it bounces at all").isLessThan(1);
        assertThat(boom.outletVerticalSpeedMps(1)).isCloseTo(0, within(1e-3));
        assertThat(boom.outletHeightM(1)).as("resting on it").isBetween(-0.03, 0.0);
    }

    @Test
    void aBoomThatCannotGiveWayIsNotCarried() {
        BoomSpec rigid = BoomSpec.rigid(18.3, 0.5).withSoil(SoilContactSpec.usual());
        Driven driven = new Driven(rigid, (xM, yM) -> yM > 10 ? 0.8 : 0.0, 0.01);
        driven.drive(1);
        assertThat(driven.boom.outletHeightM(6)).isCloseTo(-0.3, within(1e-12));
        assertThat(driven.boom.inSoil(6)).isTrue();
    }

    @Test
    void impossibleSoilIsRefused() {
        assertThatThrownBy(() -> new SoilContactSpec(-1, 0))
                .hasMessage("contact frequency of the soil, Hz, must be 0 or above, not -1.0");
    }
}
