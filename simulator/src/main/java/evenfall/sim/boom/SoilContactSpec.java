package evenfall.sim.boom;

/**
 * How the soil carries a wing that strikes it: springs and dampers under the tip and the outer half of
 * each wing, which push up and never pull down.
 *
 * <p>Crude on purpose, and all of it a choice of ours: the soil is the same everywhere and keeps no furrow, the
 * push goes to the wing's bending and to the boom's roll and not to the chassis, nothing drags the wing
 * back, and no wing folds or breaks. It is there so that a boom that strikes comes out again.
 *
 * @param contactHz natural frequency of that part of the wing on the soil, Hz; 0 for no soil at all
 * @param dampingRatio share of critical damping of it, 0 or above
 */
public record SoilContactSpec(double contactHz, double dampingRatio) {

    public SoilContactSpec {
        BoomSpec.requireNotNegative(contactHz, "contact frequency of the soil, Hz,");
        BoomSpec.requireNotNegative(dampingRatio, "damping ratio of the soil");
    }

    /** A boom goes through the soil unhindered. */
    public static SoilContactSpec none() {
        return new SoilContactSpec(0, 0);
    }

    /** Soil that gives way by a centimetre or two and throws nothing back. */
    public static SoilContactSpec usual() {
        return new SoilContactSpec(16, 1);
    }
}
