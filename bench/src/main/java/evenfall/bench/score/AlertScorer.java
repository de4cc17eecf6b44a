package evenfall.bench.score;

import evenfall.bench.received.ReportedAlert;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Alerts that were due beside alerts that were raised, by the {@link ScoringRules}. */
final class AlertScorer {
    static final String STRIKE = "strike-ahead";

    private final Scorer.Truth truth;
    private final List<ReportedAlert> raisedOnes;
    private final double endS;
    private final List<ScoredAlert> lines = new ArrayList<>();
    private final List<FaultOutcome> outcomes = new ArrayList<>();
    private final List<TrueDue> trueDues = new ArrayList<>();
    private final Set<ReportedAlert> matched = new LinkedHashSet<>();

    /** What the truth itself was due for, for faults that are told by it. */
    private record TrueDue(
            List<String> kinds,
            String place,
            double dueS,
            @Nullable ReportedAlert raised) {}

    AlertScorer(Scorer.Truth truth, List<ReportedAlert> raisedOnes) {
        this.truth = truth;
        this.raisedOnes = raisedOnes;
        List<TruthMoment> moments = truth.moments();
        endS = moments.isEmpty() ? 0 : moments.get(moments.size() - 1).atS();
        for (Watched watched : truth.watched()) {
            for (Exceedance exceedance : Exceedance.of(watched, moments)) {
                exceedance(watched, exceedance);
            }
        }
        for (Contact contact : truth.contacts()) {
            contact(contact);
        }
        for (FaultDue fault : truth.faults()) {
            fault(fault);
        }
        for (ReportedAlert alert : raisedOnes) {
            if (!matched.contains(alert)) {
                lines.add(new ScoredAlert(alert.kind(), alert.place(), null, alert, unmatched(alert), null));
            }
        }
        lines.sort(Comparator.comparingDouble(ScoredAlert::firstS));
    }

    List<ScoredAlert> lines() {
        return lines;
    }

    List<FaultOutcome> faults() {
        return outcomes;
    }

    private void exceedance(Watched watched, Exceedance exceedance) {
        Double dueS = exceedance.dueS();
        if (dueS == null) {
            return;
        }
        ReportedAlert raised = null;
        for (ReportedAlert alert : raisedOnes) {
            if (watched.isFor(alert.kind(), alert.place()) && stands(alert, exceedance)) {
                matched.add(alert);
                raised = raised == null ? alert : raised;
            }
        }
        boolean inTime = raised != null && raised.raisedS() <= dueS + ScoringRules.LATE_S;
        boolean tooSoonToSay = raised == null && endS < dueS + ScoringRules.LATE_S;
        if (raised == null && (!exceedance.counts() || tooSoonToSay)) {
            return;
        }
        Set<String> causes = exceedance.causes();
        String kind = raised != null
                ? raised.kind()
                : causes.isEmpty() ? watched.kinds().get(0) : causes.iterator().next();
        lines.add(new ScoredAlert(
                kind,
                watched.place(),
                dueS,
                raised,
                inTime ? ScoredAlert.Verdict.RIGHT : unlessHidden(watched, exceedance.fromS(), dueS),
                (raised == null || causes.isEmpty()) ? null : causes.contains(kind)));
        trueDues.add(new TrueDue(watched.kinds(), watched.place(), dueS, raised));
    }

    private ScoredAlert.Verdict unlessHidden(Watched watched, double fromS, double dueS) {
        if (truth.blinding().covers(watched.kinds(), watched.place(), fromS, dueS + ScoringRules.LATE_S)) {
            return ScoredAlert.Verdict.BLINDED;
        }
        return showsWell(watched, dueS) ? ScoredAlert.Verdict.MISLED : ScoredAlert.Verdict.MISSED;
    }

    /** Whether what was shown was past the limit at no moment in which the alert should have come. */
    private boolean showsWell(Watched watched, double dueS) {
        for (TruthMoment moment : truth.shown()) {
            boolean then = moment.atS() >= dueS - 1e-9 && moment.atS() <= dueS + ScoringRules.LATE_S;
            if (then && watched.isOver(moment)) {
                return false;
            }
        }
        return true;
    }

    private ScoredAlert.Verdict unmatched(ReportedAlert alert) {
        if (wasNear(alert, truth.moments())) {
            return ScoredAlert.Verdict.NEAR_MISS;
        }
        boolean misled = !alert.kind().equals(STRIKE) && wasNear(alert, truth.shown());
        return misled ? ScoredAlert.Verdict.MISLED : ScoredAlert.Verdict.FALSE;
    }

    private static boolean stands(ReportedAlert alert, Exceedance exceedance) {
        Double clearedS = alert.clearedS();
        return alert.raisedS() <= exceedance.toS() + ScoringRules.LATE_S
                && (clearedS == null || clearedS >= exceedance.fromS());
    }

    private void contact(Contact contact) {
        ReportedAlert before = null;
        ReportedAlert after = null;
        for (ReportedAlert alert : raisedOnes) {
            if (!alert.kind().equals(STRIKE) || !alert.place().equals(contact.place())) {
                continue;
            }
            Double clearedS = alert.clearedS();
            if (alert.raisedS() <= contact.atS()) {
                boolean still = clearedS == null || clearedS >= contact.atS();
                before = still ? alert : before;
            } else if (after == null && alert.raisedS() <= contact.atS() + ScoringRules.LATE_S) {
                after = alert;
            }
        }
        ReportedAlert raised = before == null ? after : before;
        if (raised != null) {
            matched.add(raised);
        }
        ScoredAlert.Verdict verdict = ScoredAlert.Verdict.MISSED;
        if (before != null) {
            verdict = ScoredAlert.Verdict.RIGHT;
        } else if (truth.blinding()
                .covers(List.of(STRIKE), contact.place(), contact.atS() - ScoringRules.LATE_S, contact.atS())) {
            verdict = ScoredAlert.Verdict.BLINDED;
        } else if (contact.isTooQuick()) {
            verdict = ScoredAlert.Verdict.TOO_QUICK;
        }
        lines.add(new ScoredAlert(STRIKE, contact.place(), contact.atS(), raised, verdict, null));
    }

    private void fault(FaultDue fault) {
        ReportedAlert first = null;
        List<ReportedAlert> own = new ArrayList<>();
        for (ReportedAlert alert : raisedOnes) {
            if (fault.explains(alert)) {
                first = first == null ? alert : first;
                if (matched.add(alert)) {
                    own.add(alert);
                }
            }
        }
        FaultOutcome outcome =
                fault.sign().byTruth() ? byTruth(fault, first) : bySign(fault, fault.due(truth.moments()), first);
        outcomes.add(outcome);
        for (ReportedAlert alert : own) {
            boolean late = outcome.verdict() == FaultOutcome.Verdict.LATE && alert.equals(first);
            lines.add(new ScoredAlert(
                    alert.kind(),
                    alert.place(),
                    outcome.showsS(),
                    alert,
                    late ? ScoredAlert.Verdict.MISSED : ScoredAlert.Verdict.RIGHT,
                    null));
        }
        // What the truth was due for has its own line already.
        if (outcome.verdict() == FaultOutcome.Verdict.MISSED && !fault.sign().byTruth()) {
            lines.add(new ScoredAlert(
                    fault.kinds().get(0), fault.place(), outcome.showsS(), null, ScoredAlert.Verdict.MISSED, null));
        }
    }

    /** Due at the first moment at which the truth was due for one of its kinds while it stood. */
    private FaultOutcome byTruth(FaultDue fault, @Nullable ReportedAlert first) {
        for (TrueDue due : trueDues) {
            boolean its = due.kinds().stream().anyMatch(fault.kinds()::contains) && fault.isAt(due.place());
            if (its && due.dueS() >= fault.fromS() && due.dueS() <= fault.toS() + ScoringRules.LATE_S) {
                return outcome(fault, new FaultDue.Time(due.dueS(), due.dueS() + ScoringRules.LATE_S), due.raised());
            }
        }
        return outcome(fault, null, first);
    }

    private FaultOutcome bySign(FaultDue fault, FaultDue.@Nullable Time due, @Nullable ReportedAlert first) {
        if (due == null || (first == null && due.latestS() > endS)) {
            return outcome(fault, null, first);
        }
        return outcome(fault, due, first == null ? standsSince(fault, due) : first);
    }

    /** An alert of its kinds that rose before it for another reason, and still stood: nothing new could rise. */
    private @Nullable ReportedAlert standsSince(FaultDue fault, FaultDue.Time due) {
        for (ReportedAlert alert : raisedOnes) {
            Double clearedS = alert.clearedS();
            if (fault.kinds().contains(alert.kind())
                    && alert.raisedS() < fault.fromS()
                    && (clearedS == null || clearedS >= due.latestS())) {
                return alert;
            }
        }
        return null;
    }

    private static FaultOutcome outcome(FaultDue fault, FaultDue.@Nullable Time due, @Nullable ReportedAlert raised) {
        FaultOutcome.Verdict verdict;
        if (due == null) {
            verdict = raised == null ? FaultOutcome.Verdict.NOT_DUE : FaultOutcome.Verdict.RAISED_UNASKED;
        } else if (raised == null) {
            verdict = FaultOutcome.Verdict.MISSED;
        } else {
            verdict =
                    raised.raisedS() <= due.latestS() + 1e-9 ? FaultOutcome.Verdict.IN_TIME : FaultOutcome.Verdict.LATE;
        }
        return new FaultOutcome(
                fault.fault(),
                fault.place(),
                verdict,
                due == null ? null : due.showsS(),
                due == null ? null : due.latestS() - due.showsS(),
                raised == null ? null : raised.raisedS(),
                raised == null ? null : raised.kind());
    }

    private boolean wasNear(ReportedAlert alert, List<TruthMoment> moments) {
        if (alert.kind().equals(STRIKE)) {
            return cameNear(alert);
        }
        for (Watched watched : truth.watched()) {
            if (!watched.isFor(alert.kind(), alert.place())) {
                continue;
            }
            for (TruthMoment moment : moments) {
                if (Math.abs(moment.atS() - alert.raisedS()) <= ScoringRules.LATE_S && watched.isNear(moment)) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Whether the tip went under the clearance within the time after the rise; what the run's end leaves open speaks for it. */
    private boolean cameNear(ReportedAlert alert) {
        if (endS < alert.raisedS() + ScoringRules.LATE_S) {
            return true;
        }
        for (TruthMoment moment : truth.moments()) {
            double tipM = moment.heights().tipM(alert.place());
            boolean soon = moment.atS() >= alert.raisedS() && moment.atS() <= alert.raisedS() + ScoringRules.LATE_S;
            if (soon && tipM < truth.clearanceM()) {
                return true;
            }
        }
        return false;
    }
}
