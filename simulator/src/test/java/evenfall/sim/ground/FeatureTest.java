package evenfall.sim.ground;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class FeatureTest {

    private static final double SKEW_RAD = Math.toRadians(25);

    static Stream<Feature> everyFeature() {
        Crossing skewed = Crossing.at(40, SKEW_RAD).between(-12, 15, 4);
        return Stream.of(
                new Rise(skewed, 0.6, 8),
                new Dip(skewed, 0.4, 10),
                Terrace.broadBase(skewed),
                new DeadFurrow(skewed, 0.25, 1.5, 0.1),
                new Washout(skewed, 0.5, 1.0, 1.2),
                new HeadlandBank(skewed, 0.7, 3, 2),
                new Knoll(40, 3, 12, 0.8),
                new Ruts(30, 50, 3, 0, 3, 0.6, 0.15, 0.10),
                new SideSlope(0.08, 30, 20));
    }

    @ParameterizedTest
    @MethodSource("everyFeature")
    void heightAndSlopeHaveNoJumpAnywhere(Feature feature) {
        // A kink keeps its jump in slope however small the step; a smooth shape's change of slope from step
        // to step falls with the step, here to a quarter.
        for (boolean alongX : new boolean[] {true, false}) {
            double coarse = greatestChangeOfSlope(feature, 8e-3, alongX);
            double fine = greatestChangeOfSlope(feature, 2e-3, alongX);
            assertThat(coarse).as("the feature is there").isPositive();
            assertThat(fine).isLessThan(0.3 * coarse + 1e-10);
        }
    }

    private static double greatestChangeOfSlope(Feature feature, double stepM, boolean alongX) {
        double greatest = 0;
        for (double across = -20.03; across < 60; across += 1.83) {
            double before = 0;
            double here = 0;
            for (int i = 0; i * stepM < 90; i++) {
                double along = i * stepM - 30;
                double after = alongX ? feature.heightM(along, across) : feature.heightM(across, along);
                if (i > 1) {
                    greatest = Math.max(greatest, Math.abs(after - 2 * here + before) / stepM);
                }
                before = here;
                here = after;
            }
        }
        return greatest;
    }

    @Test
    void theLeftWingMeetsASkewedTerraceFirst() {
        Terrace terrace = Terrace.broadBase(Crossing.at(100, SKEW_RAD));
        // The line passes y = −18 at 100 − 18·tan 25° = 91.607 m.
        double leftStart = 100 - 18 * Math.tan(SKEW_RAD);
        assertThat(terrace.heightM(leftStart - 0.01, -18)).isZero();
        assertThat(terrace.heightM(leftStart + 0.5, -18)).isPositive();
        assertThat(terrace.heightM(leftStart + 0.5, 0)).isZero();
        assertThat(terrace.heightM(leftStart + 0.5, 18)).isZero();
    }

    @Test
    void aTerraceHasItsRidgeAndChannelWhereTheSlopesEnd() {
        Terrace terrace = new Terrace(Crossing.at(10), 0.5, 0.3, 4, 6, 5);
        assertThat(terrace.heightM(10, 0)).isZero();
        assertThat(terrace.heightM(12, 0)).isCloseTo(0.25, within(1e-12));
        assertThat(terrace.heightM(14, 0)).isCloseTo(0.5, within(1e-12));
        assertThat(terrace.heightM(17, 0)).isCloseTo(0.1, within(1e-12));
        assertThat(terrace.heightM(20, 0)).isCloseTo(-0.3, within(1e-12));
        assertThat(terrace.heightM(25, 0)).isZero();
        assertThat(new Terrace(Crossing.at(10, Math.PI), 0.5, 0.3, 4, 6, 5).heightM(6, 0))
                .as("turned round it is met from the other side")
                .isCloseTo(0.5, within(1e-12));
    }

    @Test
    void eachFeatureHasTheSizeItWasGiven() {
        Crossing at = Crossing.at(10);
        assertThat(new Rise(at, 0.6, 8).heightM(14, 5)).isCloseTo(0.3, within(1e-12));
        assertThat(new Rise(at, 0.6, 8).heightM(500, 5)).isEqualTo(0.6);
        assertThat(new Dip(at, 0.4, 10).heightM(10, 0)).isEqualTo(-0.4);
        assertThat(new Dip(at, 0.4, 10).heightM(15, 0)).isZero();
        assertThat(new DeadFurrow(at, 0.25, 1.5, 0.1).heightM(10, 0)).isCloseTo(-0.25, within(1e-12));
        assertThat(new DeadFurrow(at, 0.25, 1.5, 0.1).heightM(11.5, 0)).isCloseTo(0.1, within(1e-12));
        assertThat(new DeadFurrow(at, 0.25, 1.5, 0.1).heightM(12.25, 0)).isZero();
        assertThat(new Washout(at, 0.5, 1, 1).heightM(10.5, 0)).isCloseTo(-0.5, within(1e-12));
        assertThat(new Washout(at, 0.5, 1, 1).heightM(11, 0)).isCloseTo(-0.25, within(1e-12));
        assertThat(new Washout(at, 0.5, 1, 1).heightM(11.5, 0)).isZero();
        assertThat(new HeadlandBank(at, 0.7, 3, 2).heightM(14, 0)).isCloseTo(0.7, within(1e-12));
        assertThat(new HeadlandBank(at, 0.7, 3, 2).heightM(18, 0)).isZero();
        assertThat(new Knoll(10, 3, 12, 0.8).heightM(10, 3)).isEqualTo(0.8);
        assertThat(new Knoll(10, 3, 12, 0.8).heightM(10, 15)).isZero();
        assertThat(new Ruts(5, 20, 1, 0, 3, 0.6, 0.15, 0.10).heightM(10, -1.5)).isEqualTo(-0.15);
        assertThat(new Ruts(5, 20, 1, 0, 3, 0.6, 0.15, 0.10).heightM(10, 1.5)).isEqualTo(-0.10);
        assertThat(new Ruts(5, 20, 1, 0, 3, 0.6, 0.15, 0.10).heightM(22, 1.5)).isZero();
        assertThat(SideSlope.everywhere(0.05).heightM(-1e6, 18)).isCloseTo(0.9, within(1e-12));
        assertThat(new SideSlope(0.05, 10, 20).heightM(20, -10)).isCloseTo(-0.25, within(1e-12));
    }

    @Test
    void aBankAlongThePassLiesUnderOneWingOnly() {
        HeadlandBank bank = new HeadlandBank(Crossing.through(0, 12, -Math.PI / 2), 0.7, 3, 2);
        assertThat(bank.heightM(50, 11.9)).isCloseTo(0, within(1e-12));
        assertThat(bank.heightM(50, 16)).isCloseTo(0.7, within(1e-12));
        assertThat(bank.heightM(-300, 16)).isCloseTo(0.7, within(1e-12));
    }

    @Test
    void aStretchKeepsAFeatureToPartOfTheWidth() {
        Dip dip = new Dip(Crossing.at(10).between(-18, 0, 2), 0.4, 10);
        assertThat(dip.heightM(10, -18)).isEqualTo(-0.4);
        assertThat(dip.heightM(10, 0)).isEqualTo(-0.4);
        assertThat(dip.heightM(10, 1)).isCloseTo(-0.2, within(1e-12));
        assertThat(dip.heightM(10, 2)).isZero();
        assertThat(dip.heightM(10, -20)).isZero();
    }

    @Test
    void layersAddUp() {
        Ground ground = new CompositeGround(
                List.<Ground>of(SideSlope.everywhere(0.05), new Knoll(10, 0, 12, 0.8), (xM, yM) -> 0.01 * xM));
        assertThat(ground.heightM(10, 2)).isCloseTo(0.1 + 0.8 * (1 - 4 / 144.0) * (1 - 4 / 144.0) + 0.1, within(1e-12));
        assertThat(new CompositeGround(List.of()).heightM(3, 4)).isZero();
        assertThat(Ground.level().heightM(3, 4)).isZero();
    }

    @Test
    void impossibleSizesAreRefused() {
        Crossing at = Crossing.at(10);
        assertThatThrownBy(() -> new Dip(at, -0.1, 10)).hasMessage("depth of a dip, m, must be 0 or above, not -0.1");
        assertThatThrownBy(() -> new Dip(at, 0.1, 0)).hasMessage("length of a dip, m, must be above 0, not 0.0");
        assertThatThrownBy(() -> new Knoll(0, 0, Double.NaN, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> at.between(3, 3, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Ruts(20, 5, 1, 0, 3, 0.6, 0, 0)).isInstanceOf(IllegalArgumentException.class);
    }
}
