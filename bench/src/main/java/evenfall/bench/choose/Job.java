package evenfall.bench.choose;

import evenfall.liquid.Application;
import evenfall.liquid.Liquid;
import org.jspecify.annotations.Nullable;

/**
 * What the outlets shall do.
 *
 * @param outlets how many places on the boom
 * @param spacingM between outlets, m
 * @param rowM row spacing, m
 * @param ratesM rates, as depths, m³/m²
 * @param speedsMps speeds of travel, m/s, above 0
 * @param product what is in the tank
 * @param thiosulphateShare share of thiosulphate in its volume, 0 to 1
 * @param pressuresPa pressures that the machine can hold at the outlets, Pa; null where each outlet's own window counts
 * @param heightM height that the boom is set to, m
 * @param wander how far it strays from that
 * @param limitCv row CV that still counts as even, a ratio
 * @param airC temperature of the air, °C; null where not given
 */
public record Job(
        int outlets,
        double spacingM,
        double rowM,
        Span ratesM,
        Span speedsMps,
        Liquid product,
        double thiosulphateShare,
        @Nullable Span pressuresPa,
        double heightM,
        Wander wander,
        double limitCv,
        @Nullable Double airC) {

    public double widthM() {
        return outlets * spacingM;
    }

    public double specificGravity() {
        return product.specificGravity();
    }

    /** What one outlet must let through, m³/s. */
    public double outletFlowM3ps(double rateM, double speedMps) {
        return Application.flowM3ps(rateM, speedMps, spacingM);
    }

    /** From the lowest rate at the lowest speed to the highest at the highest, one outlet, m³/s. */
    public Span outletFlowsM3ps() {
        return new Span(outletFlowM3ps(ratesM.low(), speedsMps.low()), outletFlowM3ps(ratesM.high(), speedsMps.high()));
    }

    /**
     * How much of the range of rates and speeds takes a flow within the given ones: its share of the area of rate against speed.
     * Where one of the two is a single value, its share of the other's length; where both are, 0 or 1.
     */
    public double shareWithin(Span flowsM3ps) {
        boolean oneRate = ratesM.low() == ratesM.high();
        boolean oneSpeed = speedsMps.low() == speedsMps.high();
        if (oneRate && oneSpeed) {
            return flowsM3ps.contains(outletFlowsM3ps().low()) ? 1 : 0;
        }
        return Math.max(0, shareUpTo(flowsM3ps.high()) - shareUpTo(flowsM3ps.low()));
    }

    private double shareUpTo(double flowM3ps) {
        double rateTimesSpeed = flowM3ps / spacingM;
        double fromMps = speedsMps.low();
        double toMps = speedsMps.high();
        if (fromMps == toMps) {
            return clamp((rateTimesSpeed / fromMps - ratesM.low()) / (ratesM.high() - ratesM.low()), 0, 1);
        }
        // Below this speed every rate takes less than the flow, above the other one none does; between them the border
        // is the
        // hyperbola rate = flow / (speed * spacing).
        double allMps = clamp(rateTimesSpeed / ratesM.high(), fromMps, toMps);
        double noneMps = clamp(rateTimesSpeed / ratesM.low(), fromMps, toMps);
        double area = allMps - fromMps;
        if (noneMps > allMps) {
            area += (rateTimesSpeed * StrictMath.log(noneMps / allMps) - ratesM.low() * (noneMps - allMps))
                    / (ratesM.high() - ratesM.low());
        }
        return area / (toMps - fromMps);
    }

    private static double clamp(double value, double low, double high) {
        return Math.max(low, Math.min(high, value));
    }
}
