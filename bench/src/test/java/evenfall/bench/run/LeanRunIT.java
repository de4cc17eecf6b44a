package evenfall.bench.run;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.bench.score.Score;
import evenfall.sim.scenario.Scenarios;
import org.junit.jupiter.api.Test;

/** The longest of the built-in scenarios. */
class LeanRunIT {
    @Test
    void anHourWithoutTroubleRaisesNothing() throws Exception {
        Score score = LeanRun.score(Scenarios.find("clean-hour"));

        assertThat(score.raised()).isZero();
        assertThat(score.falseAlerts()).isZero();
        assertThat(score.alerts()).as("and nothing is due").isEmpty();
    }
}
