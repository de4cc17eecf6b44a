package evenfall.sim.jet;

/**
 * The air that a stream flies through.
 *
 * @param densityKgpM3 density, kg/m³; 0 for flight without drag
 * @param viscosityPas dynamic viscosity, Pa·s, above 0
 */
public record Air(double densityKgpM3, double viscosityPas) {
    /** Dry air at 20 °C and sea level; handbook values from memory. */
    public static final Air AT_20C = new Air(1.204, 1.813e-5);

    /** No air at all: the limit in which a stream is a thrown stone. */
    public static final Air NONE = new Air(0, 1.813e-5);

    public Air {
        if (!(densityKgpM3 >= 0) || !(viscosityPas > 0)) {
            throw new IllegalArgumentException("air has a density of 0 or more and a viscosity above 0");
        }
    }
}
