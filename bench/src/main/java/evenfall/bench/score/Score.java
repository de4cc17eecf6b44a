package evenfall.bench.score;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The result of a run; rules in {@link ScoringRules}.
 *
 * @param truth figures of the truth
 * @param reported the same figures by the monitor's messages
 * @param rateErrorPointsP95 95th percentile of the difference, percentage points; null where nothing could be compared
 * @param rowCvPointsP95 the same for the row CV
 * @param alerts due and raised ones, by time
 * @param faults what became of each scripted fault, and of a meter that was wrong from the start
 * @param senses how far each reported quantity was from the truth
 * @param ground what the ground really got
 */
public record Score(
        Figures truth,
        Figures reported,
        @Nullable Double rateErrorPointsP95,
        @Nullable Double rowCvPointsP95,
        List<ScoredAlert> alerts,
        List<FaultOutcome> faults,
        Senses senses,
        GroundShare ground) {

    public Score {
        alerts = List.copyOf(alerts);
        faults = List.copyOf(faults);
    }

    /** Alerts that were due and did not come in time. */
    public int missed() {
        return count(ScoredAlert.Verdict.MISSED);
    }

    /** Alerts that came without any cause. */
    public int falseAlerts() {
        return count(ScoredAlert.Verdict.FALSE);
    }

    /** Alerts that came, or did not, by what sensors showed that were wrong unseen. */
    public int misled() {
        return count(ScoredAlert.Verdict.MISLED);
    }

    /** Alerts that the monitor raised. */
    public int raised() {
        return (int) alerts.stream()
                .map(ScoredAlert::raised)
                .filter(r -> r != null)
                .distinct()
                .count();
    }

    /** Alerts that were due and came in time. */
    public int right() {
        return count(ScoredAlert.Verdict.RIGHT);
    }

    private int count(ScoredAlert.Verdict verdict) {
        return (int) alerts.stream().filter(a -> a.verdict() == verdict).count();
    }
}
