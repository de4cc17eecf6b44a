package evenfall.bench.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Tips of a 36 m boom with 72 outlets, target 0.50 m, clearance 0.15 m, moved by hand. */
class TipsTest {
    private static Scenario scenario;

    @BeforeAll
    static void read() throws Exception {
        scenario = Scenarios.find("level-field");
    }

    private static Tips moved(int outlet, DoubleUnaryOperator heightM) {
        Tips tips = new Tips(scenario.world().fitted().boom(), scenario.belief());
        double[] heights = new double[72];
        for (int i = 1; i <= 500; i++) {
            Arrays.fill(heights, 0.5);
            heights[outlet] = heightM.applyAsDouble(i / 50.0);
            tips.heights(i / 50.0, heights);
        }
        return tips;
    }

    @Test
    void aTipThatComesDownTouchesOnceHoweverItBouncesUntilItIsClear() {
        Tips tips = moved(70, t -> t < 2 ? 0.5 : t < 4 ? 0.5 - 0.25 * (t - 2) : t < 5 ? 0.1 : t < 6 ? 0.0 : 0.4);
        assertThat(tips.contacts()).hasSize(1);
        Contact contact = tips.contacts().get(0);
        assertThat(contact.place()).isEqualTo("right");
        assertThat(contact.atS()).as("0.05 m are reached at 3.8 s").isCloseTo(3.8, within(0.021));
        assertThat(contact.descentS()).isCloseTo(1.8, within(0.05));
        assertThat(contact.isTooQuick()).isFalse();
    }

    @Test
    void aDropOfHalfASecondIsTooQuick() {
        Tips tips = moved(1, t -> t < 5 ? 0.5 : Math.max(0, 0.5 - (t - 5) / 0.5 * 0.5));
        assertThat(tips.contacts()).hasSize(1);
        assertThat(tips.contacts().get(0).place()).isEqualTo("left");
        assertThat(tips.contacts().get(0).isTooQuick()).isTrue();
    }

    @Test
    void whatIsClearInBetweenTouchesTwice() {
        assertThat(moved(0, t -> Math.abs(t - 3) < 0.5 || Math.abs(t - 6) < 0.5 ? 0.02 : 0.5)
                        .contacts())
                .hasSize(2);
    }

    @Test
    void outletsFurtherInAreNoTip() {
        assertThat(moved(60, t -> 0.0).contacts()).isEmpty();
        assertThat(moved(65, t -> 0.0).contacts()).hasSize(1);
    }
}
