package evenfall.bench.score;

import static evenfall.bench.score.ScoredAlert.Verdict.FALSE;
import static evenfall.bench.score.ScoredAlert.Verdict.MISSED;
import static evenfall.bench.score.ScoredAlert.Verdict.RIGHT;
import static org.assertj.core.api.Assertions.assertThat;

import evenfall.sim.fault.Faults;
import evenfall.sim.fault.ScriptedFault;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** A level, steady pass of 40 s in which the hub hangs from 10 s to 25 s. */
class FaultScoringTest {
    private static final FaultDue HUNG = new FaultDue(List.of("sensor-silent"), "hub", 10, 25);

    @Test
    void anAlertOfTheFaultsKindWhileItStandsIsTrue() {
        Score score = HandMade.scoreOfLevelPass(40, List.of(HUNG), HandMade.alert("sensor-silent", "hub", 11.2, 26.0));

        assertThat(score.alerts()).extracting(ScoredAlert::verdict).containsExactly(RIGHT);
        assertThat(score.alerts().get(0).dueS()).isEqualTo(10.0);
        assertThat(score.falseAlerts()).isZero();
    }

    @Test
    void silenceOfTheMonitorIsAMiss() {
        Score score = HandMade.scoreOfLevelPass(40, List.of(HUNG));

        assertThat(score.alerts()).extracting(ScoredAlert::verdict).containsExactly(MISSED);
        assertThat(score.missed()).isEqualTo(1);
    }

    @Test
    void aFaultThatCameTooLateToBeNoticedSaysNothing() {
        FaultDue late = new FaultDue(List.of("sensor-silent"), "hub", 35, Double.POSITIVE_INFINITY);

        assertThat(HandMade.scoreOfLevelPass(40, List.of(late)).alerts()).isEmpty();
    }

    @Test
    void anAlertOfAnotherKindOrBeforeTheFaultStaysFalse() {
        Score score = HandMade.scoreOfLevelPass(
                40,
                List.of(HUNG),
                HandMade.alert("sensor-silent", "hub", 5.0, 6.0),
                HandMade.alert("sensor-silent", "hub", 12.0, 26.0),
                HandMade.alert("speed-lost", "gnss", 12.0, 26.0));

        assertThat(score.alerts()).extracting(ScoredAlert::verdict).containsExactly(FALSE, RIGHT, FALSE);
    }

    @Test
    void whatNothingFittedCanTellIsDueForNothing() {
        ScriptedFault unseen = new ScriptedFault(
                Faults.all().stream()
                        .filter(f -> f.alerts().isEmpty())
                        .findFirst()
                        .orElseThrow(),
                1,
                OptionalDouble.empty(),
                "",
                List.of(),
                1);

        assertThat(FaultDue.of(List.of(unseen))).isEmpty();
    }
}
