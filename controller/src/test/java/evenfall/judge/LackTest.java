package evenfall.judge;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.liquid.Application;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.sense.Quantity;
import evenfall.sense.Unknown;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** What seems to lack before an alert is sure of it: sooner than that, and seldom where nothing does. */
class LackTest {
    private static final Quantity UNKNOWN = Quantity.unknown(Unknown.NOT_FITTED, -1);
    private static final int SHUTS = 200;

    private final Rig rig;
    private final Conductance conductance;
    private final Random random = new Random(8);
    private int look;

    LackTest() throws Exception {
        rig = RigFile.read(Path.of("docs", "example-rig.yaml"));
        conductance = new Conductance(rig);
    }

    /** At the pressure that all outlets' flow takes, with less of it; 0.8 kPa of scatter. */
    private void look(double flowPart, double wantedPart) {
        look++;
        double wantedM3ps = wantedPart
                * Application.flowM3ps(rig.target().rateM(), 5.5, rig.boom().widthM());
        double pressurePa =
                rig.outlet().orifice().pressurePa(wantedM3ps / 72, rig.liquid().specificGravity());
        conductance.look(new Situation(
                200_000L * look,
                0.2,
                1.1,
                Quantity.known(5.5, 0),
                UNKNOWN,
                UNKNOWN,
                UNKNOWN,
                UNKNOWN,
                UNKNOWN,
                null,
                null,
                List.of(),
                List.of(),
                new Situation.Plumbing(
                        Quantity.known(flowPart * wantedM3ps, 0),
                        Quantity.known(pressurePa + 800 * random.nextGaussian(), 0),
                        Quantity.known(72, 0),
                        0x3F,
                        UNKNOWN,
                        UNKNOWN)));
    }

    /** Looks from the fault to the first that lacks, and to the step that an alert rests on. */
    private int[] looksUntil(IntToDoubleFunction part) {
        int lacks = 0;
        int told = 0;
        for (int i = 1; i <= SHUTS + 60; i++) {
            look(i <= SHUTS ? 1 : part.applyAsDouble(i - SHUTS), 1);
            if (i <= SHUTS) {
                assertThat(conductance.mayLack()).isFalse();
            }
            lacks = lacks == 0 && conductance.mayLack() ? i - SHUTS : lacks;
            told = told == 0 && !conductance.steps().isEmpty() ? i - SHUTS : told;
        }
        return new int[] {lacks, told};
    }

    @Test
    void aSectionThatShutsLacksWithinASecondAndIsToldAfterThree() {
        // Its motor valve takes a second.
        int[] looks = looksUntil(i -> 1 - Math.min(1, i / 5.0) / 6);
        assertThat(looks[0]).isBetween(1, 8);
        assertThat(looks[1]).isGreaterThan(looks[0] + 8);
    }

    @Test
    void oneBlockedOutletOf72LacksTwoSecondsBeforeItIsTold() {
        int[] looks = looksUntil(i -> 71 / 72.0);
        assertThat(looks[0]).isBetween(1, 8);
        assertThat(looks[1]).isGreaterThanOrEqualTo(looks[0] + 9);
    }

    @Test
    void whatComesBackLacksNoMore() {
        looksUntil(i -> i < 6 ? 5 / 6.0 : 1);
        assertThat(conductance.mayLack()).isFalse();
        assertThat(conductance.steps().isEmpty()).isTrue();
    }

    @Test
    void nothingLacksWhileFlowAndPressureWanderTogetherForAnHour() {
        int lacks = 0;
        for (int i = 1; i <= 5 * 3600; i++) {
            look(1, 1 + 0.1 * Math.sin(i / 40.0));
            lacks += conductance.mayLack() ? 1 : 0;
        }
        assertThat(lacks).isLessThanOrEqualTo(5);
    }

    @Test
    void moreFlowIsNoLack() {
        assertThat(looksUntil(i -> 7 / 6.0)[0]).isZero();
    }
}
