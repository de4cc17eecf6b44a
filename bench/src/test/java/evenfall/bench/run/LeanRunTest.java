package evenfall.bench.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.bench.score.FaultOutcome;
import evenfall.bench.score.Score;
import evenfall.bench.score.ScoredAlert;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LeanRunTest {
    /** What is compared of an alert; the value that it shows is rounded in messages and not scored. */
    private static List<Object> marks(ScoredAlert alert) {
        return Arrays.asList(
                alert.kind(),
                alert.place(),
                alert.dueS(),
                alert.raisedS(),
                alert.clearedS(),
                alert.verdict(),
                alert.rightCause());
    }

    @ParameterizedTest
    @ValueSource(strings = {"terrace-crossing", "wet-hub", "headland-turns"})
    void withoutMessagesTheScoreIsTheSame(String name) throws Exception {
        Scenario scenario = Scenarios.find(name);
        Score whole = new QuickRun(scenario, Optional.empty()).run().score();
        Score lean = LeanRun.score(scenario);

        assertThat(lean.alerts().stream().map(LeanRunTest::marks))
                .containsExactlyElementsOf(
                        whole.alerts().stream().map(LeanRunTest::marks).toList());
        assertThat(lean.faults()).containsExactlyElementsOf(whole.faults());
        assertThat(lean.truth()).isEqualTo(whole.truth());
        // Messages hold a rate error to 0.1 %, a row CV to 0.01 %, a height to 1 mm, a pressure to 0.1 kPa.
        assertThat(lean.rateErrorPointsP95()).isCloseTo(whole.rateErrorPointsP95(), within(0.06));
        assertThat(lean.rowCvPointsP95()).isCloseTo(whole.rowCvPointsP95(), within(0.006));
        assertThat(lean.senses().spreads().keySet())
                .containsExactlyElementsOf(whole.senses().spreads().keySet());
        lean.senses().spreads().forEach((quantity, spread) -> {
            assertThat(spread.count())
                    .as(quantity)
                    .isEqualTo(whole.senses().of(quantity).count());
            assertThat(spread.mean())
                    .as(quantity)
                    .isCloseTo(whole.senses().of(quantity).mean(), within(0.06));
        });
    }

    /** {@link LeanRunIT} does the same for an hour. */
    @Test
    void aFieldWithoutTroubleRaisesNothing() throws Exception {
        Score score = LeanRun.score(Scenarios.find("level-field"));

        assertThat(score.raised()).isZero();
        assertThat(score.falseAlerts()).isZero();
        assertThat(score.alerts()).as("and nothing is due").isEmpty();
    }

    @Test
    void everyScriptedFaultHasAnOutcome() throws Exception {
        Scenario scenario = Scenarios.find("foam-on-a-sensor");

        assertThat(LeanRun.score(scenario).faults())
                .extracting(FaultOutcome::fault)
                .containsExactlyElementsOf(scenario.world().faults().stream()
                        .map(f -> f.fault().id())
                        .toList());
    }
}
