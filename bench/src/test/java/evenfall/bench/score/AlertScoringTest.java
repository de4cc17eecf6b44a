package evenfall.bench.score;

import static evenfall.bench.score.HandMade.SPEED_MPS;
import static evenfall.bench.score.HandMade.alert;
import static evenfall.bench.score.HandMade.moment;
import static evenfall.bench.score.HandMade.score;
import static evenfall.bench.score.HandMade.truth;
import static evenfall.bench.score.HandMade.well;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class AlertScoringTest {
    /** Past the rate limit from 4.0 s to before 8.0 s at 5 m/s: 1 s and 5 m are complete at 5.0 s. */
    private static List<TruthMoment> rateHighFromFourToEight() {
        return truth(20, t -> t >= 4 && t < 8 ? moment(t, SPEED_MPS, 0.12, 0.5, 0.5, 0.05, 0.5) : well(t));
    }

    private static ScoredAlert only(Score score) {
        assertThat(score.alerts()).hasSize(1);
        return score.alerts().get(0);
    }

    @Test
    void anAlertIsDueWhenTheHoldInTimeAndInMetresIsComplete() {
        ScoredAlert line = only(score(rateHighFromFourToEight(), alert("rate-high", "boom", 5.4, 10.0)));
        assertThat(line.kind()).isEqualTo("rate-high");
        assertThat(line.place()).isEqualTo("boom");
        assertThat(line.dueS()).isEqualTo(5.0);
        assertThat(line.raisedS()).isEqualTo(5.4);
        assertThat(line.clearedS()).isEqualTo(10.0);
        assertThat(line.delayS()).isCloseTo(0.4, within(1e-9));
        assertThat(line.verdict()).isEqualTo(ScoredAlert.Verdict.RIGHT);
    }

    @Test
    void atASlowerSpeedTheMetresDecideWhenItIsDue() {
        List<TruthMoment> slow = truth(20, t -> moment(t, 2, t >= 4 && t < 12 ? -0.15 : 0, 0.5, 0.5, 0.05, 0.5));
        ScoredAlert line = only(score(slow, alert("rate-low", "boom", 7, null)));
        assertThat(line.dueS())
                .as("5 m at 2 m/s take 2.5 s, seen at the next fifth of a second")
                .isCloseTo(6.6, within(1e-9));
    }

    @Test
    void aDueAlertThatNeverCameIsMissed() {
        Score score = score(rateHighFromFourToEight());
        assertThat(score.missed()).isEqualTo(1);
        assertThat(score.falseAlerts()).isZero();
        assertThat(only(score).raised()).isNull();
    }

    @Test
    void aDueAlertThatCameMoreThanThreeSecondsLateIsMissedThoughItIsShown() {
        Score onTime = score(rateHighFromFourToEight(), alert("rate-high", "boom", 8.0, null));
        Score late = score(rateHighFromFourToEight(), alert("rate-high", "boom", 8.1, null));
        assertThat(onTime.missed()).isZero();
        assertThat(late.missed()).isEqualTo(1);
        assertThat(late.falseAlerts()).isZero();
        assertThat(only(late).raisedS()).isEqualTo(8.1);
    }

    @Test
    void anExceedanceThatEndsWithinASecondOfItsDueTimeNeedNotBeRaised() {
        List<TruthMoment> brief =
                truth(20, t -> t >= 4 && t < 5.8 ? moment(t, SPEED_MPS, 0.12, 0.5, 0.5, 0.05, 0.5) : well(t));
        assertThat(score(brief).alerts()).isEmpty();
        Score raised = score(brief, alert("rate-high", "boom", 5.2, 7.0));
        assertThat(only(raised).verdict()).isEqualTo(ScoredAlert.Verdict.RIGHT);
        assertThat(only(raised).dueS()).isEqualTo(5.0);
    }

    @Test
    void aBreakStartsTheHoldAnew() {
        List<TruthMoment> broken = truth(
                20,
                t -> t >= 4 && t < 8 && Math.abs(t - 4.8) > 0.01
                        ? moment(t, SPEED_MPS, 0.12, 0.5, 0.5, 0.05, 0.5)
                        : well(t));
        assertThat(only(score(broken)).dueS()).isEqualTo(6.0);
    }

    @Test
    void anAlertWithoutAnyCauseIsFalseAndANearMissIsNot() {
        List<TruthMoment> calm = truth(20, t -> moment(t, SPEED_MPS, 0.079, 0.5, 0.5, 0.05, 0.5));
        List<TruthMoment> close = truth(20, t -> moment(t, SPEED_MPS, 0.081, 0.5, 0.5, 0.05, 0.5));
        Score falseOne = score(calm, alert("rate-high", "boom", 10, 12.0));
        Score near = score(close, alert("rate-high", "boom", 10, 12.0));
        assertThat(falseOne.falseAlerts()).isEqualTo(1);
        assertThat(only(falseOne).dueS()).isNull();
        assertThat(near.falseAlerts()).isZero();
        assertThat(only(near).verdict()).isEqualTo(ScoredAlert.Verdict.NEAR_MISS);
    }

    @Test
    void anAlertAtAnotherPlaceOrOfAnotherKindDoesNotMatch() {
        List<TruthMoment> left = truth(20, t -> moment(t, SPEED_MPS, 0.0, t >= 4 && t < 9 ? 0.3 : 0.5, 0.5, 0.05, 0.5));
        Score score = score(left, alert("wing-low", "right", 5.5, null), alert("wing-high", "left", 5.5, null));
        assertThat(score.missed()).isEqualTo(1);
        assertThat(score.falseAlerts()).isEqualTo(2);
    }

    @Test
    void oneAlertThatStandsAcrossTwoExceedancesAnswersBoth() {
        List<TruthMoment> twice = truth(
                20,
                t -> (t >= 4 && t < 8) || (t >= 9 && t < 13)
                        ? moment(t, SPEED_MPS, 0.12, 0.5, 0.5, 0.05, 0.5)
                        : well(t));
        Score score = score(twice, alert("rate-high", "boom", 5.2, 15.0));
        assertThat(score.missed()).isZero();
        assertThat(score.alerts()).hasSize(2);
        assertThat(score.alerts().get(1).dueS()).isEqualTo(10.0);
        assertThat(score.alerts().get(1).delayS()).isCloseTo(-4.8, within(1e-9));
        assertThat(score.raised()).isEqualTo(1);
    }

    @Test
    void anAlertThatClearedBeforeTheExceedanceDoesNotAnswerIt() {
        Score score = score(rateHighFromFourToEight(), alert("rate-high", "boom", 0.4, 0.8));
        assertThat(score.missed()).isEqualTo(1);
        assertThat(score.falseAlerts()).isEqualTo(1);
    }

    @Test
    void nothingIsSaidOfAnAlertThatFellDueLessThanThreeSecondsBeforeTheEnd() {
        List<TruthMoment> late = truth(20, t -> t >= 17 ? moment(t, SPEED_MPS, 0.12, 0.5, 0.5, 0.05, 0.5) : well(t));
        assertThat(score(late).alerts()).isEmpty();
    }

    @Test
    void unevenRowsAreGappedBelowAndDoubledAboveTheTargetHeight() {
        List<TruthMoment> low = truth(20, t -> moment(t, SPEED_MPS, 0.0, 0.4, 0.4, t >= 4 && t < 9 ? 0.2 : 0.05, 0.4));
        List<TruthMoment> high = truth(20, t -> moment(t, SPEED_MPS, 0.0, 0.7, 0.7, t >= 4 && t < 9 ? 0.2 : 0.05, 0.7));
        assertThat(only(score(low)).kind()).isEqualTo("bands-gapped");
        assertThat(only(score(high)).kind()).isEqualTo("bands-doubled");
    }

    @Test
    void aWingOutsideItsHeightsExplainsItsRowsSoOnlyTheWingIsDue() {
        List<TruthMoment> dive = truth(
                20,
                t -> moment(t, SPEED_MPS, 0.0, t >= 4 && t < 9 ? 0.3 : 0.5, 0.5, t >= 4 && t < 9 ? 0.3 : 0.05, 0.45));
        assertThat(only(score(dive)).kind()).isEqualTo("wing-low");
    }

    @Test
    void anUnknownRateErrorIsNotPastAnyLimit() {
        List<TruthMoment> standing = truth(20, t -> moment(t, 0, null, 0.5, 0.5, null, 0.5));
        assertThat(score(standing).alerts()).isEmpty();
    }

    @Test
    void aSilentSensorIsFalseInAScenarioWithoutFaults() {
        assertThat(score(truth(20, HandMade::well), alert("sensor-silent", "hub", 3, null))
                        .falseAlerts())
                .isEqualTo(1);
    }
}
