package evenfall.outlet;

import evenfall.liquid.Orifice;
import java.util.List;

/**
 * An outlet as fitted at a given spacing: every angle and offset is a number.
 *
 * @param id name in files
 * @param title name for people
 * @param ratedPressurePa pressure of the rated point, Pa
 * @param ratedFlowM3ps flow with water at that pressure, m³/s
 * @param lowPa lowest working pressure, Pa
 * @param highPa highest working pressure, Pa
 * @param streams from left to right; their shares sum to 1
 */
public record OutletType(
        String id,
        String title,
        double ratedPressurePa,
        double ratedFlowM3ps,
        double lowPa,
        double highPa,
        List<Stream> streams) {
    public OutletType {
        streams = List.copyOf(streams);
    }

    /** The orifice law of the whole outlet. */
    public Orifice orifice() {
        return Orifice.ratedAt(ratedFlowM3ps, ratedPressurePa);
    }

    /**
     * How much faster than rated the streams leave: {@code √(p / (p_rated · SG))}, by Bernoulli's theorem.
     *
     * @param pressurePa pressure at the outlet, Pa; at or below 0 nothing leaves
     * @param specificGravity of the product
     */
    public double speedFactor(double pressurePa, double specificGravity) {
        return pressurePa <= 0 ? 0 : Math.sqrt(pressurePa / (ratedPressurePa * specificGravity));
    }

    /** The same type with another metering size; the streams' holes are sized along, so their rated speed stays. */
    public OutletType withRatedFlow(double flowM3ps) {
        return new OutletType(id, title, ratedPressurePa, flowM3ps, lowPa, highPa, streams);
    }
}
