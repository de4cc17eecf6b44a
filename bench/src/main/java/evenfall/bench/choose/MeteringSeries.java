package evenfall.bench.choose;

import evenfall.quantity.TradeUnits;
import java.util.ArrayList;
import java.util.List;

/**
 * The metering sizes that are on offer, by what they let through: the R10 series of preferred numbers (ISO 3, from memory), ten
 * sizes to a tenfold flow, each about a quarter larger than the one before.
 *
 * <p>That outlets come in this series is a choice of ours. The colour code of spray nozzles, ISO 10625, "might not be applicable to
 * liquid fertilizer applications" by its own scope (as published by BSI), so sizes here go by flow alone.
 */
public final class MeteringSeries {
    private static final double[] R10 = {1.00, 1.25, 1.60, 2.00, 2.50, 3.15, 4.00, 5.00, 6.30, 8.00};

    /** From a thin stream to more than a whole metre of boom takes at any rate in use. */
    private static final double SMALLEST_LPM = 0.2;

    private static final double LARGEST_LPM = 40;

    private MeteringSeries() {}

    /** Flows with water at an outlet's rated pressure, m³/s, rising. */
    public static List<Double> flowsM3ps() {
        List<Double> flows = new ArrayList<>();
        for (double decade : new double[] {0.1, 1, 10}) {
            for (double number : R10) {
                double lpm = decade * number;
                if (lpm >= SMALLEST_LPM - 1e-9 && lpm <= LARGEST_LPM + 1e-9) {
                    flows.add(lpm * TradeUnits.LPM_M3PS);
                }
            }
        }
        return List.copyOf(flows);
    }
}
