package evenfall.bench.score;

import static evenfall.bench.score.ScoredAlert.Verdict.FALSE;
import static evenfall.bench.score.ScoredAlert.Verdict.MISSED;
import static evenfall.bench.score.ScoredAlert.Verdict.RIGHT;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** A level, steady pass of 40 s in which the hub hangs from 10 s to 25 s. */
class FaultScoringTest {
    private static final FaultDue HUNG =
            new FaultDue("hub-hung", List.of("sensor-silent"), "hub", 10, 25, FaultSign.when(3, (now, onset) -> true));

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
        FaultDue late = new FaultDue(
                "hub-hung",
                List.of("sensor-silent"),
                "hub",
                38,
                Double.POSITIVE_INFINITY,
                FaultSign.when(3, (now, onset) -> true));

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
    void anAlertThatComesAfterTheFaultsTimeIsShownAndMissed() {
        Score score = HandMade.scoreOfLevelPass(40, List.of(HUNG), HandMade.alert("sensor-silent", "hub", 13.2, 26.0));

        assertThat(score.alerts()).extracting(ScoredAlert::verdict).containsExactly(MISSED);
        assertThat(score.faults()).extracting(FaultOutcome::verdict).containsExactly(FaultOutcome.Verdict.LATE);
        assertThat(score.faults().get(0).delayS()).isCloseTo(3.2, within(1e-9));
    }

    @Test
    void aFaultThatNeverShowsIsDueForNothingButRaisedItIsTrue() {
        FaultDue small = new FaultDue("outlet-blocked", List.of("outlet-blocked"), "17", 10, 25, FaultSign.never());

        assertThat(HandMade.scoreOfLevelPass(40, List.of(small)).alerts()).isEmpty();
        Score raised =
                HandMade.scoreOfLevelPass(40, List.of(small), HandMade.alert("outlet-blocked", "boom", 22.0, 26.0));
        assertThat(raised.alerts()).extracting(ScoredAlert::verdict).containsExactly(RIGHT);
        assertThat(raised.faults())
                .extracting(FaultOutcome::verdict)
                .containsExactly(FaultOutcome.Verdict.RAISED_UNASKED);
    }

    @Test
    void aFaultShowsAgainFromNothingAfterABreak() {
        FaultDue broken = new FaultDue(
                "meter-stuck",
                List.of("travel-without-flow"),
                "boom",
                10,
                30,
                FaultSign.when(5, (now, onset) -> Math.abs(now.atS() - 14) > 0.1));

        FaultOutcome outcome =
                HandMade.scoreOfLevelPass(40, List.of(broken)).faults().get(0);
        assertThat(outcome.verdict()).isEqualTo(FaultOutcome.Verdict.MISSED);
        assertThat(outcome.showsS()).isCloseTo(14.2, within(1e-9));
    }

    @Test
    void aFaultOfTheMachineIsDueWhenTheTruthIs() {
        FaultDue weak = new FaultDue("pump-weak", List.of("rate-low"), "boom", 3, 30, FaultSign.truth());
        List<TruthMoment> low = HandMade.truth(
                20,
                t -> t >= 4 && t < 9
                        ? HandMade.moment(t, HandMade.SPEED_MPS, -0.12, 0.5, 0.5, 0.05)
                        : HandMade.well(t));

        Score raised = HandMade.score(low, List.of(weak), HandMade.alert("rate-low", "boom", 5.6, 10.0));
        assertThat(raised.alerts()).extracting(ScoredAlert::verdict).containsExactly(RIGHT);
        assertThat(raised.faults().get(0).verdict()).isEqualTo(FaultOutcome.Verdict.IN_TIME);
        assertThat(raised.faults().get(0).delayS()).isCloseTo(0.6, within(1e-9));

        Score silent = HandMade.score(low, List.of(weak));
        assertThat(silent.missed()).as("one line, not two, for one thing").isEqualTo(1);
        assertThat(silent.faults().get(0).verdict()).isEqualTo(FaultOutcome.Verdict.MISSED);

        assertThat(HandMade.scoreOfLevelPass(20, List.of(weak)).faults().get(0).verdict())
                .as("a weak pump that still gives the target")
                .isEqualTo(FaultOutcome.Verdict.NOT_DUE);
    }
}
