package evenfall.bench.score;

import evenfall.bench.received.Report;
import evenfall.bench.received.ReportedAlert;
import evenfall.bench.received.ReportedMoment;
import evenfall.rig.Rig;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Sets a report beside the truth by the {@link ScoringRules}. */
final class Scorer {
    private final Rig.Limits limits;
    private final List<TruthMoment> truth;
    private final Report report;
    private final GroundShare ground;
    private final List<FaultDue> faults;

    /**
     * @param limits the rig's
     * @param truth moments in order of time
     * @param ground what the ground really got
     * @param faults what went wrong by the script, and what it is due for
     */
    Scorer(Rig.Limits limits, List<TruthMoment> truth, GroundShare ground, List<FaultDue> faults, Report report) {
        this.limits = limits;
        this.truth = truth;
        this.report = report;
        this.ground = ground;
        this.faults = List.copyOf(faults);
    }

    Score score() {
        List<Double> trueErrorsPct = new ArrayList<>();
        List<Double> trueCvs = new ArrayList<>();
        for (TruthMoment moment : truth) {
            addPercent(trueErrorsPct, moment.rateError());
            addKnown(trueCvs, moment.boom().rowCv());
        }
        List<Double> reportedErrorsPct = new ArrayList<>();
        List<Double> reportedCvs = new ArrayList<>();
        List<Double> errorPoints = new ArrayList<>();
        List<Double> cvPoints = new ArrayList<>();
        for (ReportedMoment moment : report.moments()) {
            addKnown(reportedErrorsPct, moment.rateErrorPct());
            addKnown(reportedCvs, moment.rowCv());
            TruthMoment beside = nearest(moment.atS());
            if (beside != null) {
                Double trueError = beside.rateError();
                addDifference(errorPoints, moment.rateErrorPct(), trueError == null ? null : 100 * trueError, 1);
                addDifference(cvPoints, moment.rowCv(), beside.boom().rowCv(), 100);
            }
        }
        return new Score(
                Figures.of(trueErrorsPct, trueCvs),
                Figures.of(reportedErrorsPct, reportedCvs),
                Figures.p95Abs(errorPoints),
                Figures.p95Abs(cvPoints),
                alerts(),
                ground);
    }

    private static void addKnown(List<Double> to, @Nullable Double value) {
        if (value != null) {
            to.add(value);
        }
    }

    private static void addPercent(List<Double> to, @Nullable Double ratio) {
        if (ratio != null) {
            to.add(100 * ratio);
        }
    }

    private static void addDifference(List<Double> to, @Nullable Double one, @Nullable Double other, double times) {
        if (one != null && other != null) {
            to.add(times * (one - other));
        }
    }

    private @Nullable TruthMoment nearest(double atS) {
        int low = 0;
        int high = truth.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (truth.get(middle).atS() < atS) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        TruthMoment best = null;
        for (int i = Math.max(0, low - 1); i <= Math.min(truth.size() - 1, low); i++) {
            if (best == null || Math.abs(truth.get(i).atS() - atS) < Math.abs(best.atS() - atS)) {
                best = truth.get(i);
            }
        }
        return best == null || Math.abs(best.atS() - atS) > ScoringRules.PAIR_WITHIN_S + 1e-9 ? null : best;
    }

    private List<ScoredAlert> alerts() {
        List<ScoredAlert> lines = new ArrayList<>();
        Set<ReportedAlert> matched = new LinkedHashSet<>();
        for (Watched watched : Watched.all(limits)) {
            for (Exceedance exceedance : Exceedance.of(watched, truth, limits)) {
                Double dueS = exceedance.dueS();
                if (dueS == null) {
                    continue;
                }
                ReportedAlert raised = standingDuring(watched, exceedance);
                if (raised != null) {
                    matched.add(raised);
                }
                boolean inTime = raised != null && raised.raisedS() <= dueS + ScoringRules.LATE_S;
                boolean tooSoonToSay = raised == null && endS() < dueS + ScoringRules.LATE_S;
                if (inTime) {
                    lines.add(line(watched, dueS, raised, ScoredAlert.Verdict.RIGHT));
                } else if (raised != null || (exceedance.counts() && !tooSoonToSay)) {
                    lines.add(line(watched, dueS, raised, ScoredAlert.Verdict.MISSED));
                }
            }
        }
        for (FaultDue fault : faults) {
            addFault(fault, lines, matched);
        }
        for (ReportedAlert alert : report.alerts()) {
            if (!matched.contains(alert)) {
                ScoredAlert.Verdict verdict =
                        wasNear(alert) ? ScoredAlert.Verdict.NEAR_MISS : ScoredAlert.Verdict.FALSE;
                lines.add(new ScoredAlert(alert.kind(), alert.place(), null, alert, verdict));
            }
        }
        lines.sort(Comparator.comparingDouble(ScoredAlert::firstS));
        return lines;
    }

    private void addFault(FaultDue fault, List<ScoredAlert> lines, Set<ReportedAlert> matched) {
        boolean noticed = false;
        for (ReportedAlert alert : report.alerts()) {
            if (!fault.explains(alert)) {
                continue;
            }
            noticed = true;
            if (matched.add(alert)) {
                lines.add(
                        new ScoredAlert(alert.kind(), alert.place(), fault.fromS(), alert, ScoredAlert.Verdict.RIGHT));
            }
        }
        if (!noticed && fault.fromS() + ScoringRules.FAULT_WITHIN_S <= Math.min(endS(), fault.toS())) {
            lines.add(new ScoredAlert(
                    fault.kinds().get(0), fault.place(), fault.fromS(), null, ScoredAlert.Verdict.MISSED));
        }
    }

    private static ScoredAlert line(
            Watched watched, double dueS, @Nullable ReportedAlert raised, ScoredAlert.Verdict verdict) {
        return new ScoredAlert(watched.kind(), watched.place(), dueS, raised, verdict);
    }

    private double endS() {
        return truth.isEmpty() ? 0 : truth.get(truth.size() - 1).atS();
    }

    /** The first alert of that kind and place that stands during an exceedance or shortly after it. */
    private @Nullable ReportedAlert standingDuring(Watched watched, Exceedance exceedance) {
        for (ReportedAlert alert : report.alerts()) {
            Double clearedS = alert.clearedS();
            if (alert.kind().equals(watched.kind())
                    && alert.place().equals(watched.place())
                    && alert.raisedS() <= exceedance.toS() + ScoringRules.LATE_S
                    && (clearedS == null || clearedS >= exceedance.fromS())) {
                return alert;
            }
        }
        return null;
    }

    private boolean wasNear(ReportedAlert alert) {
        for (Watched watched : Watched.all(limits)) {
            if (!watched.kind().equals(alert.kind()) || !watched.place().equals(alert.place())) {
                continue;
            }
            for (TruthMoment moment : truth) {
                if (Math.abs(moment.atS() - alert.raisedS()) <= ScoringRules.LATE_S && watched.isNear(moment)) {
                    return true;
                }
            }
        }
        return false;
    }
}
