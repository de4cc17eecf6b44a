package evenfall.bench.received;

import org.jspecify.annotations.Nullable;

/**
 * One alert from rise to end, as the monitor told it.
 *
 * @param kind the contract's word
 * @param place where
 * @param sinceS when the limit was first passed, s on the clock of the scenario
 * @param raisedS when the alert rose, s
 * @param clearedS when it cleared, s; null while it stands, and where nobody watched any longer
 * @param value the number that broke the limit, in {@code unit}; null where there is none
 * @param limit in {@code unit}; null where there is none
 * @param unit {@code %}, {@code m} or {@code s}
 * @param why one plain sentence
 * @param act what to do
 */
public record ReportedAlert(
        String kind,
        String place,
        double sinceS,
        double raisedS,
        @Nullable Double clearedS,
        @Nullable Double value,
        @Nullable Double limit,
        String unit,
        String why,
        String act) {

    /** The same alert with its end. */
    public ReportedAlert cleared(double atS) {
        return new ReportedAlert(kind, place, sinceS, raisedS, atS, value, limit, unit, why, act);
    }
}
