package evenfall.bench.study;

import evenfall.bench.score.Score;
import org.jspecify.annotations.Nullable;

/**
 * What is kept of a run.
 *
 * @param rowCvMean true row CV, mean, a ratio; null where nothing fell
 * @param rowCvP95 its 95th percentile
 * @param below80Share share of row cells that got less than 80 % of their cell's mean, a ratio
 * @param above120Share share of those that got more than 120 %
 * @param rateErrorP95AbsPct 95th percentile of the true rate error's magnitude, percent
 * @param saidRowCvMean mean row CV by the monitor; null where it knew none
 * @param raised alerts that the monitor raised
 * @param missed alerts that were due and did not come in time
 * @param unfounded alerts without a cause
 */
public record Outcome(
        @Nullable Double rowCvMean,
        @Nullable Double rowCvP95,
        @Nullable Double below80Share,
        @Nullable Double above120Share,
        @Nullable Double rateErrorP95AbsPct,
        @Nullable Double saidRowCvMean,
        int raised,
        int missed,
        int unfounded) {

    static Outcome of(Score score) {
        return new Outcome(
                score.truth().rowCvMean(),
                score.truth().rowCvP95(),
                score.ground().below80Share(),
                score.ground().above120Share(),
                score.truth().rateErrorP95AbsPct(),
                score.reported().rowCvMean(),
                score.raised(),
                score.missed(),
                score.falseAlerts());
    }
}
