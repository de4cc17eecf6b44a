package evenfall.bench.score;

import evenfall.bench.received.Report;
import evenfall.bench.received.ReportedMoment;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Sets a report beside the truth by the {@link ScoringRules}. */
final class Scorer {
    private final Truth truth;
    private final GroundShare ground;
    private final Report report;

    /**
     * What was true in a run.
     *
     * @param moments in order of time
     * @param shown the same moments as sensors show them that are wrong in a way that no other could tell
     * @param contacts of tips, in order of time
     * @param watched what the truth can be due for
     * @param faults what went wrong, by the script or from the start
     * @param blinding what could not be judged when
     * @param clearanceM the rig's, m
     * @param sensors names of the height sensors, from the left
     */
    record Truth(
            List<TruthMoment> moments,
            List<TruthMoment> shown,
            List<Contact> contacts,
            List<Watched> watched,
            List<FaultDue> faults,
            Blinding blinding,
            double clearanceM,
            List<String> sensors) {}

    /**
     * @param ground what the ground really got
     */
    Scorer(Truth truth, GroundShare ground, Report report) {
        this.truth = truth;
        this.ground = ground;
        this.report = report;
    }

    Score score() {
        List<Double> trueErrorsPct = new ArrayList<>();
        List<Double> trueCvs = new ArrayList<>();
        for (TruthMoment moment : truth.moments()) {
            Double error = moment.rateError();
            addKnown(trueErrorsPct, error == null ? null : 100 * error);
            addKnown(trueCvs, moment.rowCv());
        }
        List<Double> reportedErrorsPct = new ArrayList<>();
        List<Double> reportedCvs = new ArrayList<>();
        Pairing pairing = new Pairing(truth.moments(), truth.sensors());
        for (ReportedMoment moment : report.moments()) {
            addKnown(reportedErrorsPct, moment.rateErrorPct());
            addKnown(reportedCvs, moment.rowCv());
            pairing.take(moment);
        }
        AlertScorer alerts = new AlertScorer(truth, report.alerts());
        return new Score(
                Figures.of(trueErrorsPct, trueCvs),
                Figures.of(reportedErrorsPct, reportedCvs),
                pairing.errorPointsP95(),
                pairing.cvPointsP95(),
                alerts.lines(),
                alerts.faults(),
                pairing.senses(),
                ground);
    }

    private static void addKnown(List<Double> to, @Nullable Double value) {
        if (value != null) {
            to.add(value);
        }
    }
}
