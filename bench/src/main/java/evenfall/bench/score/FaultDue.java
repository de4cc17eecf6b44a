package evenfall.bench.score;

import evenfall.bench.received.ReportedAlert;
import evenfall.sim.fault.ScriptedFault;
import java.util.List;

/**
 * What a scripted fault is due for: any one of its kinds.
 *
 * @param kinds the contract's words; never empty
 * @param place where the scenario puts it; {@code boom} where the part is there once
 * @param fromS when it comes, s
 * @param toS when it goes, s; infinite where it stays
 */
record FaultDue(List<String> kinds, String place, double fromS, double toS) {
    FaultDue {
        kinds = List.copyOf(kinds);
    }

    /** Those that the faults of a scenario should lead to; a fault that nothing fitted can tell is due for nothing. */
    static List<FaultDue> of(List<ScriptedFault> faults) {
        return faults.stream()
                .filter(f -> !f.fault().alerts().isEmpty())
                .map(f -> new FaultDue(
                        f.fault().alerts(),
                        f.where().isEmpty() ? "boom" : f.where(),
                        f.atS(),
                        f.forS().isPresent() ? f.atS() + f.forS().getAsDouble() : Double.POSITIVE_INFINITY))
                .toList();
    }

    /** Whether an alert may be this fault's doing. */
    boolean explains(ReportedAlert alert) {
        return kinds.contains(alert.kind()) && alert.raisedS() >= fromS && alert.raisedS() <= toS + ScoringRules.LATE_S;
    }
}
