package evenfall.sim.jet;

/**
 * How far a jet stays whole, and what it falls into.
 *
 * <p>Length by R. Grant and S. Middleman, "Newtonian jet stability", AIChE Journal 12 (1966): laminar
 * {@code L/d = 19.5 √We (1 + 3 Oh)^0.85}, turbulent {@code L/d = 8.51 We^0.32}, with {@code We = ρ u² d / σ} and
 * {@code Oh = μ / √(ρ σ d)}; both from memory. <b>The choice between them matters by a factor of seven</b> at the sizes of
 * streaming outlets, and real break-up depends on the hole and the turbulence before it as well (Trettel, dissertation,
 * University of Texas 2020, abstract). The regime here is chosen by the Reynolds number of the stream, {@code ρ u d / μ}: laminar
 * below 2,000, turbulent above 4,000 (common for pipes; from memory), in between the logarithm of the length goes smoothly from
 * one to the other, which is a choice of ours.
 *
 * <p>Drops by Lord Rayleigh's fastest growing wave on an inviscid jet: {@code D = 1.89 d} (from memory).
 */
final class BreakUp {
    /** Drop over jet diameter. */
    static final double DROP_RATIO = 1.89;

    private static final double LAMINAR_BELOW_RE = 2000;
    private static final double TURBULENT_ABOVE_RE = 4000;

    private BreakUp() {}

    static double laminarDiameters(double weber, double ohnesorge) {
        return 19.5 * Math.sqrt(weber) * StrictMath.pow(1 + 3 * ohnesorge, 0.85);
    }

    static double turbulentDiameters(double weber) {
        return 8.51 * StrictMath.pow(weber, 0.32);
    }

    /**
     * @param liquid what flows
     * @param diameterM of the jet, m
     * @param speedMps of the liquid against its outlet, m/s
     * @return length of the coherent part, m
     */
    static double lengthM(JetLiquid liquid, double diameterM, double speedMps) {
        double density = liquid.densityKgpM3();
        double weber = density * speedMps * speedMps * diameterM / liquid.surfaceTensionNpm();
        if (!(weber > 0)) {
            return 0;
        }
        double ohnesorge = liquid.viscosityPas() / Math.sqrt(density * liquid.surfaceTensionNpm() * diameterM);
        double reynolds = density * speedMps * diameterM / liquid.viscosityPas();
        double turbulence =
                StrictMath.log(reynolds / LAMINAR_BELOW_RE) / StrictMath.log(TURBULENT_ABOVE_RE / LAMINAR_BELOW_RE);
        turbulence = Math.max(0, Math.min(1, turbulence));
        turbulence = turbulence * turbulence * (3 - 2 * turbulence);
        double diameters = StrictMath.pow(laminarDiameters(weber, ohnesorge), 1 - turbulence)
                * StrictMath.pow(turbulentDiameters(weber), turbulence);
        return diameters * diameterM;
    }
}
