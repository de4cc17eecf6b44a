package evenfall.liquid;

/**
 * A metering orifice: {@code Q = K · √(p / SG)}.
 *
 * <p>Follows from Bernoulli's theorem with a constant discharge coefficient (Encyclopaedia Britannica, 11th ed., vol. 14,
 * "Hydraulics"). K comes from one rated point with water.
 *
 * @param k flow with water at 1 Pa, m³/s per √Pa
 */
public record Orifice(double k) {
    public Orifice {
        if (!(k > 0)) {
            throw new IllegalArgumentException("an orifice lets something through: K is above 0, not " + k);
        }
    }

    /**
     * @param flowM3ps flow with water at the rated pressure, m³/s, above 0
     * @param pressurePa rated pressure, Pa, above 0
     */
    public static Orifice ratedAt(double flowM3ps, double pressurePa) {
        return new Orifice(flowM3ps / Math.sqrt(pressurePa));
    }

    /**
     * @param pressurePa pressure above the surrounding air, Pa; at or below 0 nothing flows
     * @param specificGravity density over that of water
     * @return flow, m³/s
     */
    public double flowM3ps(double pressurePa, double specificGravity) {
        return pressurePa <= 0 ? 0 : k * Math.sqrt(pressurePa / specificGravity);
    }

    /**
     * @param flowM3ps flow, m³/s, 0 or more
     * @param specificGravity density over that of water
     * @return the pressure that drives it, Pa
     */
    public double pressurePa(double flowM3ps, double specificGravity) {
        double ratio = flowM3ps / k;
        return ratio * ratio * specificGravity;
    }
}
