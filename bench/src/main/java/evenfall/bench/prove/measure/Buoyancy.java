package evenfall.bench.prove.measure;

/**
 * A scale is adjusted with steel weights in air; a liquid pushes more air aside and seems a thousandth too light.
 *
 * <p>{@code m = reading · (1 − ρa/8000) / (1 − ρa/ρ)} with 1.2 kg/m³ of air and weights of 8000 kg/m³: the conventional values of
 * weighing (OIML D 28, from memory).
 */
public final class Buoyancy {
    private static final double AIR_KGPM3 = 1.2;
    private static final double WEIGHTS_KGPM3 = 8000;

    private Buoyancy() {}

    /**
     * @param readingKg what the scale shows, kg
     * @param densityKgpM3 of the liquid, kg/m³
     * @return volume of the liquid, m³
     */
    public static double volumeM3(double readingKg, double densityKgpM3) {
        double massKg = readingKg * (1 - AIR_KGPM3 / WEIGHTS_KGPM3) / (1 - AIR_KGPM3 / densityKgpM3);
        return massKg / densityKgpM3;
    }
}
