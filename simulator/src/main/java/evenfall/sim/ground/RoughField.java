package evenfall.sim.ground;

import evenfall.sim.chance.Chance;
import java.util.Arrays;

/**
 * Random ground whose profile along any straight line has the spectrum of ISO 8608 with waviness 2:
 * one-sided displacement density {@code Gd(n) = Gd(n0) · (n/n0)⁻²}, n in cycles/m, n0 = 0.1 cycle/m.
 *
 * <h2>From profiles to the field</h2>
 *
 * <p>Let S(ρ) be the isotropic two-sided density over the plane of frequencies, ρ² = n² + m², in m⁴. The
 * profile along one line has the density of everything that projects onto its direction,
 * {@code Gd(n) = 2 ∫ S(√(n² + m²)) dm} over all m, the 2 making it one-sided. Try {@code S(ρ) = c·ρ⁻³}:
 * with {@code ∫ (n² + m²)^(−3/2) dm = 2/n²} this is {@code Gd(n) = 4c/n²}. Hence
 *
 * <pre>  S(ρ) = Gd(n0) · n0² / (4 ρ³)</pre>
 *
 * <p>Cut to a band ρ1 … ρ2 its variance is {@code ∫ S 2πρ dρ = (π/2) · Gd(n0) · n0² · (1/ρ1 − 1/ρ2)}: π/2
 * of what the profile alone has in the same band, since waves that run across the line show up in the
 * profile as longer ones. Near the upper edge a profile falls short by {@code √(1 − n²/ρ2²)} (4 % of
 * density at 1 cycle/m, 38 % at 2.83), below the lower edge it levels off.
 *
 * <h2>How it is kept</h2>
 *
 * <p>Two {@link Tile}s turned by different angles: 1024 × 1024 points at 0.125 m for wavelengths from
 * 0.28 to 128 m, and 256 × 256 points at 4 m for waves of 227 to 512 m, so that an hour of driving does
 * not visibly repeat. 4.3 MB in all. The second tile takes the place of a sum of sines, which would cost
 * more than all the rest. Continuing the spectrum below 0.011 cycle/m, the edge of the standard's band, is
 * a choice of ours.
 */
public final class RoughField implements Ground {

    private static final double N0_CPM = 0.1;

    private static final int SHORT_SIZE_LOG2 = 10;
    private static final double SHORT_STEP_M = 0.125;
    private static final int LONG_SIZE_LOG2 = 8;
    private static final double LONG_STEP_M = 4.0;

    /** Highest frequency of the field, cycles/m: nine tenths of what the grid could hold. */
    static final double HIGHEST_CPM = 0.45 / SHORT_STEP_M;

    /** Lowest frequency of the field, cycles/m. */
    static final double LOWEST_CPM = 1.0 / 512;

    /**
     * Where the two tiles meet, cycles/m. The short tile's lowest waves stand for the grid's cells around
     * their frequencies; missing is one cell around zero, as large as a circle of 1/√π cells.
     */
    private static final double SEAM_CPM = 1.0 / (1.7724538509055159 * (1 << SHORT_SIZE_LOG2) * SHORT_STEP_M);

    // Turned by the golden slope, whose multiples keep furthest from whole numbers, and by an eighth of a
    // circle's half: two angles that have nothing to do with each other or with the pass.
    private static final double SHORT_COS = 0.8506508083520400;
    private static final double SHORT_SIN = 0.5257311121191336;
    private static final double LONG_COS = 0.9238795325112867;
    private static final double LONG_SIN = 0.3826834323650898;

    private final Tile shortWaves;
    private final Tile longWaves;

    private RoughField(Tile shortWaves, Tile longWaves) {
        this.shortWaves = shortWaves;
        this.longWaves = longWaves;
    }

    /** A field of the geometric mean roughness of this class. */
    public static RoughField of(RoughnessClass roughness, Chance chance) {
        return of(roughness.gdN0M3(), chance);
    }

    /**
     * A field of any roughness.
     *
     * @param gdN0M3 Gd(n0) at n0 = 0.1 cycle/m, m³, above 0
     * @throws IllegalArgumentException when it is not a number above 0
     */
    public static RoughField of(double gdN0M3, Chance chance) {
        if (!(gdN0M3 > 0 && gdN0M3 < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("roughness Gd(n0) must be a number above 0 m³, not " + gdN0M3);
        }
        double density = gdN0M3 * N0_CPM * N0_CPM / 4;
        Tile shortWaves =
                Tile.make(SHORT_SIZE_LOG2, SHORT_STEP_M, density, SEAM_CPM, HIGHEST_CPM, SHORT_COS, SHORT_SIN, chance);
        Tile longWaves =
                Tile.make(LONG_SIZE_LOG2, LONG_STEP_M, density, LOWEST_CPM, SEAM_CPM, LONG_COS, LONG_SIN, chance);
        return new RoughField(shortWaves, longWaves);
    }

    @Override
    public double heightM(double xM, double yM) {
        return shortWaves.heightM(xM, yM) + longWaves.heightM(xM, yM);
    }

    @Override
    public void heightsM(double[] xM, double[] yM, double[] into, int n) {
        Arrays.fill(into, 0, n, 0);
        shortWaves.addM(xM, yM, into, n);
        longWaves.addM(xM, yM, into, n);
    }
}
