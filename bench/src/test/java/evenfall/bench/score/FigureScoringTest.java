package evenfall.bench.score;

import static evenfall.bench.score.HandMade.SPEED_MPS;
import static evenfall.bench.score.HandMade.moment;
import static evenfall.bench.score.HandMade.says;
import static evenfall.bench.score.HandMade.truth;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.bench.received.Report;
import evenfall.bench.received.ReportedMoment;
import evenfall.bench.received.WireTally;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class FigureScoringTest {
    private static Score score(List<TruthMoment> truth, List<ReportedMoment> says) {
        return HandMade.score(truth, List.of(), List.of(), new Report(says, List.of(), WireTally.NONE, 0));
    }

    @Test
    void figuresAreMeansAndPercentilesOfWhatIsKnown() {
        // Errors of 0, 1 … 20 % over 21 moments: mean 10, and the 95th percentile lies 0.95 · 20 = 19 steps up.
        List<TruthMoment> truth = truth(4, t -> moment(t, SPEED_MPS, -t * 5 / 100, 0.5, 0.5, t * 5 / 100));
        Score score = score(truth, List.of());
        assertThat(score.truth().rateErrorMeanPct()).isCloseTo(-10, within(1e-9));
        assertThat(score.truth().rateErrorP95AbsPct()).isCloseTo(19, within(1e-9));
        assertThat(score.truth().rowCvMean()).isCloseTo(0.10, within(1e-9));
        assertThat(score.truth().rowCvP95()).isCloseTo(0.19, within(1e-9));
    }

    @Test
    void nothingKnownGivesNullAndNotZero() {
        Score score = score(truth(4, t -> moment(t, 0, null, 0.5, 0.5, null)), List.of(says(1, null, null)));
        assertThat(score.truth()).isEqualTo(new Figures(null, null, null, null));
        assertThat(score.reported()).isEqualTo(new Figures(null, null, null, null));
        assertThat(score.rateErrorPointsP95()).isNull();
        assertThat(score.rowCvPointsP95()).isNull();
    }

    @Test
    void pointsAreDifferencesToTheMomentNearestInTimeWhereBothAreKnown() {
        List<TruthMoment> truth = truth(4, t -> moment(t, SPEED_MPS, t < 2 ? null : 0.05, 0.5, 0.5, 0.10));
        List<ReportedMoment> says = new ArrayList<>();
        for (int i = 0; i <= 20; i++) {
            says.add(says(i / 5.0 + 0.09, 8.0, 0.13));
        }
        Score score = score(truth, says);
        assertThat(score.rateErrorPointsP95()).isCloseTo(3, within(1e-9));
        assertThat(score.rowCvPointsP95()).isCloseTo(3, within(1e-9));
        assertThat(score.reported().rateErrorMeanPct()).isCloseTo(8, within(1e-9));
    }

    @Test
    void aMessageFurtherThanThePairingTimeFromAnyTrueMomentIsNotCompared() {
        List<TruthMoment> truth = truth(4, HandMade::well);
        assertThat(score(truth, List.of(says(4.15, 8.0, 0.13))).rateErrorPointsP95())
                .isCloseTo(8, within(1e-9));
        assertThat(score(truth, List.of(says(4.16, 8.0, 0.13))).rateErrorPointsP95())
                .isNull();
    }
}
