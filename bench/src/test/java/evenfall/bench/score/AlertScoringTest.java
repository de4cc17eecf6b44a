package evenfall.bench.score;

import static evenfall.bench.score.HandMade.SPEED_MPS;
import static evenfall.bench.score.HandMade.alert;
import static evenfall.bench.score.HandMade.lines;
import static evenfall.bench.score.HandMade.moment;
import static evenfall.bench.score.HandMade.score;
import static evenfall.bench.score.HandMade.truth;
import static evenfall.bench.score.HandMade.well;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.bench.received.ReportedAlert;
import java.util.List;
import org.junit.jupiter.api.Test;

class AlertScoringTest {
    /** Past the rate limit from 4.0 s to before 8.0 s at 5 m/s: 1 s and 5 m are complete at 5.0 s. */
    private static List<TruthMoment> rateHighFromFourToEight() {
        return truth(20, t -> t >= 4 && t < 8 ? moment(t, SPEED_MPS, 0.12, 0.5, 0.5, 0.05) : well(t));
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
        List<TruthMoment> slow = truth(20, t -> moment(t, 2, t >= 4 && t < 12 ? -0.15 : 0, 0.5, 0.5, 0.05));
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
                truth(20, t -> t >= 4 && t < 5.8 ? moment(t, SPEED_MPS, 0.12, 0.5, 0.5, 0.05) : well(t));
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
                        ? moment(t, SPEED_MPS, 0.12, 0.5, 0.5, 0.05)
                        : well(t));
        assertThat(only(score(broken)).dueS()).isEqualTo(6.0);
    }

    @Test
    void anAlertWithoutAnyCauseIsFalseAndANearMissIsNot() {
        List<TruthMoment> calm = truth(20, t -> moment(t, SPEED_MPS, 0.079, 0.5, 0.5, 0.05));
        List<TruthMoment> close = truth(20, t -> moment(t, SPEED_MPS, 0.081, 0.5, 0.5, 0.05));
        Score falseOne = score(calm, alert("rate-high", "boom", 10, 12.0));
        Score near = score(close, alert("rate-high", "boom", 10, 12.0));
        assertThat(falseOne.falseAlerts()).isEqualTo(1);
        assertThat(only(falseOne).dueS()).isNull();
        assertThat(near.falseAlerts()).isZero();
        assertThat(only(near).verdict()).isEqualTo(ScoredAlert.Verdict.NEAR_MISS);
    }

    @Test
    void anAlertAtAnotherPlaceOrOfAnotherKindDoesNotMatch() {
        List<TruthMoment> left = truth(20, t -> moment(t, SPEED_MPS, 0.0, t >= 4 && t < 9 ? 0.3 : 0.5, 0.5, 0.05));
        Score score = score(left, alert("wing-low", "right", 5.5, null), alert("wing-high", "left", 5.5, null));
        assertThat(score.missed()).isEqualTo(1);
        assertThat(score.falseAlerts()).isEqualTo(2);
    }

    @Test
    void oneAlertThatStandsAcrossTwoExceedancesAnswersBoth() {
        List<TruthMoment> twice = truth(
                20,
                t -> (t >= 4 && t < 8) || (t >= 9 && t < 13) ? moment(t, SPEED_MPS, 0.12, 0.5, 0.5, 0.05) : well(t));
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
        List<TruthMoment> late = truth(20, t -> t >= 17 ? moment(t, SPEED_MPS, 0.12, 0.5, 0.5, 0.05) : well(t));
        assertThat(score(late).alerts()).isEmpty();
    }

    private static List<TruthMoment> unevenFromFourToNine(double doubledMore, double gapTimes) {
        return truth(20, t -> t >= 4 && t < 9 ? lines(t, 0.2, doubledMore, gapTimes) : well(t));
    }

    @Test
    void theLinesSayWhetherUnevenRowsAreGappedOrDoubled() {
        assertThat(only(score(unevenFromFourToNine(-0.1, 2.0))).kind()).isEqualTo("bands-gapped");
        assertThat(only(score(unevenFromFourToNine(0.3, 1.5))).kind()).isEqualTo("bands-doubled");
    }

    @Test
    void anAlertOfEitherNameAnswersUnevenRowsAndItsCauseIsScoredApart() {
        ReportedAlert gapped = alert("bands-gapped", "boom", 5.4, 10.0);
        ReportedAlert doubled = alert("bands-doubled", "boom", 5.4, 10.0);
        for (ReportedAlert said : List.of(gapped, doubled)) {
            ScoredAlert low = only(score(unevenFromFourToNine(-0.1, 2.0), said));
            ScoredAlert high = only(score(unevenFromFourToNine(0.3, 1.5), said));
            ScoredAlert both = only(score(unevenFromFourToNine(0.3, 2.5), said));
            ScoredAlert neither = only(score(unevenFromFourToNine(0.0, 1.0), said));
            assertThat(List.of(low, high, both, neither))
                    .allMatch(line -> line.verdict() == ScoredAlert.Verdict.RIGHT)
                    .allMatch(line -> line.kind().equals(said.kind()));
            assertThat(low.rightCause()).isEqualTo(said == gapped);
            assertThat(high.rightCause()).isEqualTo(said == doubled);
            assertThat(both.rightCause()).isTrue();
            assertThat(neither.rightCause()).isNull();
        }
    }

    private static List<TruthMoment> flowing(double speedMps, TruthMoment.Flows fromFourToNine) {
        return truth(20, t -> HandMade.flowing(t, speedMps, t >= 4 && t < 9 ? fromFourToNine : HandMade.WELL));
    }

    @Test
    void pressureOutsideTheOutletsWindowIsDueAfterTheRigsHold() {
        for (double pressurePa : new double[] {99_000, 401_000}) {
            ScoredAlert line = only(score(flowing(
                    SPEED_MPS, new TruthMoment.Flows(2.7e-3, 2.7e-3, pressurePa, 36, 0b111111, 2.7e-3, 1.5e-3))));
            assertThat(line.kind()).isEqualTo("pressure-outside");
            assertThat(line.dueS()).isEqualTo(5.0);
        }
        for (double pressurePa : new double[] {101_000, 399_000}) {
            assertThat(score(flowing(
                                    SPEED_MPS,
                                    new TruthMoment.Flows(2.7e-3, 2.7e-3, pressurePa, 36, 0b111111, 2.7e-3, 1.5e-3)))
                            .alerts())
                    .isEmpty();
        }
    }

    @Test
    void travelWithoutFlowIsDueAfterTwoSecondsBelowATenthOfWhatIsWanted() {
        ScoredAlert line = only(score(
                flowing(SPEED_MPS, new TruthMoment.Flows(0.26e-3, 0.26e-3, 150_000, 36, 0b111111, 2.7e-3, 1.5e-3))));
        assertThat(line.kind()).isEqualTo("travel-without-flow");
        assertThat(line.dueS()).isEqualTo(6.0);
        assertThat(score(flowing(
                                SPEED_MPS,
                                new TruthMoment.Flows(0.28e-3, 0.28e-3, 150_000, 36, 0b111111, 2.7e-3, 1.5e-3)))
                        .alerts())
                .isEmpty();
        assertThat(score(flowing(SPEED_MPS, new TruthMoment.Flows(0, 0, 0, 0, 0, 0, 1.5e-3)))
                        .alerts())
                .as("nothing is wanted with all sections off")
                .isEmpty();
    }

    @Test
    void flowWithAllOffOrStandingIsDueAfterThreeSecondsAboveTwoPercent() {
        ScoredAlert off = only(score(flowing(SPEED_MPS, new TruthMoment.Flows(0.031e-3, 0, 150_000, 0, 0, 0, 1.5e-3))));
        assertThat(off.kind()).isEqualTo("flow-without-travel");
        assertThat(off.dueS()).isEqualTo(7.0);
        assertThat(score(flowing(SPEED_MPS, new TruthMoment.Flows(0.029e-3, 0, 150_000, 0, 0, 0, 1.5e-3)))
                        .alerts())
                .isEmpty();
        List<TruthMoment> standing = truth(
                20,
                t -> HandMade.flowing(
                        t,
                        0,
                        new TruthMoment.Flows(t >= 4 && t < 9 ? 0.031e-3 : 0, 0, 150_000, 36, 0b111111, 0, 1.5e-3)));
        assertThat(only(score(standing)).kind()).isEqualTo("flow-without-travel");
    }

    private static final Contact CONTACT = new Contact("left", 10.0, 1.2);

    private static List<TruthMoment> leftTipDownAtTen() {
        return truth(20, t -> HandMade.tips(t, t >= 9 && t < 11 ? 0.04 : 0.4, 0.4));
    }

    @Test
    void aStrikeMustBeWarnedOfBeforeTheTipTouches() {
        ScoredAlert before =
                only(HandMade.strikes(leftTipDownAtTen(), List.of(CONTACT), alert("strike-ahead", "left", 8.8, 12.0)));
        assertThat(before.verdict()).isEqualTo(ScoredAlert.Verdict.RIGHT);
        assertThat(before.delayS()).as("1.2 s of lead").isCloseTo(-1.2, within(1e-9));
        ScoredAlert after =
                only(HandMade.strikes(leftTipDownAtTen(), List.of(CONTACT), alert("strike-ahead", "left", 10.2, 12.0)));
        assertThat(after.verdict()).isEqualTo(ScoredAlert.Verdict.MISSED);
        ScoredAlert gone = HandMade.strikes(
                        leftTipDownAtTen(), List.of(CONTACT), alert("strike-ahead", "left", 8.8, 9.8))
                .alerts()
                .get(0);
        assertThat(gone.raisedS()).as("cleared again before the contact").isEqualTo(8.8);
        assertThat(HandMade.strikes(leftTipDownAtTen(), List.of(CONTACT)).missed())
                .isEqualTo(1);
    }

    @Test
    void aTipThatDropsInHalfASecondIsTooQuickToWarnOfUnlessSomebodyDid() {
        Contact quick = new Contact("left", 10.0, 0.5);
        assertThat(only(HandMade.strikes(leftTipDownAtTen(), List.of(quick))).verdict())
                .isEqualTo(ScoredAlert.Verdict.TOO_QUICK);
        assertThat(only(HandMade.strikes(leftTipDownAtTen(), List.of(quick), alert("strike-ahead", "left", 9.8, null)))
                        .verdict())
                .isEqualTo(ScoredAlert.Verdict.RIGHT);
    }

    @Test
    void aStrikeAheadIsFalseWhereThatTipStaysAboveTheClearance() {
        List<TruthMoment> low = truth(20, t -> HandMade.tips(t, t >= 9 && t < 11 ? 0.14 : 0.4, 0.4));
        assertThat(HandMade.strikes(low, List.of(), alert("strike-ahead", "left", 7.0, 12.0))
                        .falseAlerts())
                .isZero();
        assertThat(HandMade.strikes(low, List.of(), alert("strike-ahead", "left", 5.0, 7.0))
                        .falseAlerts())
                .isEqualTo(1);
        assertThat(HandMade.strikes(low, List.of(), alert("strike-ahead", "right", 8.0, 9.0))
                        .falseAlerts())
                .isEqualTo(1);
    }

    @Test
    void aWingOutsideItsHeightsExplainsItsRowsSoOnlyTheWingIsDue() {
        List<TruthMoment> dive = truth(
                20, t -> moment(t, SPEED_MPS, 0.0, t >= 4 && t < 9 ? 0.3 : 0.5, 0.5, t >= 4 && t < 9 ? 0.3 : 0.05));
        assertThat(only(score(dive)).kind()).isEqualTo("wing-low");
    }

    @Test
    void anUnknownRateErrorIsNotPastAnyLimit() {
        List<TruthMoment> standing =
                truth(20, t -> HandMade.flowing(t, 0, new TruthMoment.Flows(0, 0, 150_000, 36, 0b111111, 0, 1.5e-3)));
        assertThat(score(standing).alerts()).isEmpty();
    }

    @Test
    void aSilentSensorIsFalseInAScenarioWithoutFaults() {
        assertThat(score(truth(20, HandMade::well), alert("sensor-silent", "hub", 3, null))
                        .falseAlerts())
                .isEqualTo(1);
    }
}
