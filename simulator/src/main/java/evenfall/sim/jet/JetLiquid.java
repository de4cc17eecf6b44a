package evenfall.sim.jet;

import evenfall.liquid.Liquid;

/**
 * What matters of a liquid once it has left the hole.
 *
 * @param densityKgpM3 density, kg/m³, above 0
 * @param surfaceTensionNpm surface tension against air, N/m, above 0
 * @param viscosityPas dynamic viscosity, Pa·s, above 0
 */
public record JetLiquid(double densityKgpM3, double surfaceTensionNpm, double viscosityPas) {
    /** Water at 20 °C; handbook values from memory. */
    private static final double WATER_TENSION_NPM = 0.0728;

    private static final double WATER_VISCOSITY_PAS = 1.002e-3;

    /** A product 28 % heavier than water is this much more viscous. Our choice, see {@link #of}. */
    private static final double VISCOSITY_RATIO_AT_SG_128 = 2.5;

    /** And its surface tension is this much lower, N/m. Our choice, see {@link #of}. */
    private static final double TENSION_DROP_AT_SG_128_NPM = 0.004;

    public JetLiquid {
        if (!(densityKgpM3 > 0) || !(surfaceTensionNpm > 0) || !(viscosityPas > 0)) {
            throw new IllegalArgumentException("a liquid's density, surface tension and viscosity are above 0");
        }
    }

    /**
     * A product by its density. No published surface tension or viscosity of UAN was found: both are choices of ours, set to what
     * is remembered of UAN 28 % at 20 °C (about 2.5 mPa·s and a little less tension than water's, for the corrosion inhibitor) and
     * led through water at SG 1: the logarithm of the viscosity and the tension are taken to be linear in the density.
     */
    public static JetLiquid of(Liquid liquid) {
        double towardsUan = (liquid.specificGravity() - 1) / 0.28;
        return new JetLiquid(
                liquid.densityKgpM3(),
                WATER_TENSION_NPM - TENSION_DROP_AT_SG_128_NPM * towardsUan,
                WATER_VISCOSITY_PAS * StrictMath.pow(VISCOSITY_RATIO_AT_SG_128, towardsUan));
    }
}
