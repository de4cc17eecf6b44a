package evenfall.bench.prove.guide;

import evenfall.bench.prove.measure.Estimate;
import evenfall.quantity.FixedDecimals;
import org.jspecify.annotations.Nullable;

/**
 * A constant that a proof has found.
 *
 * @param rigPlace where it stands in a rig file, as {@code sensors.flow.pulses_per_L}; null where the rig file names no such sensor
 * @param beside place in a rig file beside which a remark about it makes sense
 * @param of which sensor
 * @param key with unit, as a rig file has it
 * @param estimate in that unit
 */
public record Constant(@Nullable String rigPlace, String beside, String of, String key, Estimate estimate) {
    private static final int MOST_DECIMALS = 6;

    /** The value with as many decimals as its uncertainty is worth: its last digit is at most a tenth of it. */
    public String text() {
        return FixedDecimals.text(estimate.value(), decimals());
    }

    /** Expanded uncertainty with the same decimals. */
    public String expandedText() {
        return FixedDecimals.text(estimate.expanded(), decimals());
    }

    private int decimals() {
        int decimals = 0;
        double digit = 1;
        while (decimals < MOST_DECIMALS && digit > 0.1 * estimate.expanded()) {
            decimals++;
            digit /= 10;
        }
        return decimals;
    }
}
