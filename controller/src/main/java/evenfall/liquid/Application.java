package evenfall.liquid;

/**
 * The identity between flow, speed, width and rate: {@code A = Q / (v · W)}.
 *
 * <p>In trade units {@code L/ha = 600 · L/min ÷ (km/h · m)} and {@code US gal/ac = 5940 · gpm ÷ (mph · inches)} per outlet,
 * both exact (calibration sheets of Clemson University and of Mesa County, Colorado).
 */
public final class Application {
    private Application() {}

    /**
     * @param flowM3ps flow over the whole width, m³/s
     * @param speedMps ground speed, m/s, above 0
     * @param widthM width that is switched on, m, above 0
     * @return litres on a hectare as a depth, m³/m² (1 L/ha is 1e-7 m)
     */
    public static double rateM(double flowM3ps, double speedMps, double widthM) {
        return flowM3ps / (speedMps * widthM);
    }

    /** The flow that a rate takes, m³/s; the arguments as in {@link #rateM}. */
    public static double flowM3ps(double rateM, double speedMps, double widthM) {
        return rateM * speedMps * widthM;
    }

    /** Rate error: a share of the target, 0 when they agree. */
    public static double error(double rateM, double targetM) {
        return rateM / targetM - 1;
    }

    /** Nitrogen on the ground, kg/m² (1 kg/ha is 1e-4 kg/m²). */
    public static double nitrogenKgpM2(double rateM, Liquid liquid) {
        return rateM * liquid.nitrogenKgpM3();
    }
}
