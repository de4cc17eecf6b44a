package evenfall.sim.ground;

/**
 * Roughness classes of ISO 8608 by the displacement spectrum Gd at n0 = 0.1 cycle/m.
 *
 * <p>Geometric means 16, 64, 256, 1024 and 4096 · 10⁻⁶ m³, each class bounded by half and twice its
 * mean: constants of ISO 8608 as openly reproduced (upper limits in github.com/wanglongqi/RoadProfile,
 * which cites the standard; the means follow from the factor of four between classes). That a field
 * looks like class C to E, seen from a machine that crosses it, is common practice, no source.
 */
public enum RoughnessClass {
    A(16e-6),
    B(64e-6),
    C(256e-6),
    D(1024e-6),
    E(4096e-6);

    private final double gdN0M3;

    RoughnessClass(double gdN0M3) {
        this.gdN0M3 = gdN0M3;
    }

    /** Geometric mean of Gd(n0), m³. */
    public double gdN0M3() {
        return gdN0M3;
    }

    /** Lower limit of Gd(n0), m³. The standard gives none for class A; half the mean is ours. */
    public double lowerLimitM3() {
        return gdN0M3 / 2;
    }

    /** Upper limit of Gd(n0), m³. */
    public double upperLimitM3() {
        return gdN0M3 * 2;
    }
}
