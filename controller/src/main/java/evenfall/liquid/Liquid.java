package evenfall.liquid;

/**
 * A product as it is in the tank.
 *
 * @param id name in files: lower-case words joined by hyphens
 * @param title name for people
 * @param densityKgpM3 density, kg/m³
 * @param nitrogenKgpM3 nitrogen in a cubic metre of product, kg/m³ (the same number as g/L)
 * @param sulphurKgpM3 sulphur in a cubic metre of product, kg/m³
 */
public record Liquid(String id, String title, double densityKgpM3, double nitrogenKgpM3, double sulphurKgpM3) {
    /** Density of water at 20 °C, kg/m³; orifices are rated with it. Source: the value used by general handbooks, from memory. */
    public static final double WATER_KGPM3 = 998.2;

    public Liquid {
        if (!(densityKgpM3 > 0) || !(nitrogenKgpM3 >= 0) || !(sulphurKgpM3 >= 0)) {
            throw new IllegalArgumentException("a liquid needs a density above 0 and contents of 0 or more: " + id);
        }
    }

    /** Density over that of water, the SG of the orifice law; no unit. */
    public double specificGravity() {
        return densityKgpM3 / WATER_KGPM3;
    }

    /**
     * The same product with a density measured on the farm. The contents by mass stay, so contents by volume follow the
     * density.
     *
     * @param measuredKgpM3 density, kg/m³
     */
    public Liquid withDensity(double measuredKgpM3) {
        double ratio = measuredKgpM3 / densityKgpM3;
        return new Liquid(id, title, measuredKgpM3, nitrogenKgpM3 * ratio, sulphurKgpM3 * ratio);
    }

    /**
     * Two products in one tank. Volumes are taken to add up (mixing contraction is below what a farm can measure; our
     * assumption, no source).
     *
     * @param other what is mixed in
     * @param otherShare its share of the volume, 0 to 1
     */
    public Liquid blendedWith(Liquid other, double otherShare) {
        if (!(otherShare >= 0 && otherShare <= 1)) {
            throw new IllegalArgumentException("a share is from 0 to 1, not " + otherShare);
        }
        double own = 1 - otherShare;
        long percent = Math.round(100 * otherShare);
        return new Liquid(
                id + "+" + other.id,
                title + " with " + percent + " % " + other.title,
                own * densityKgpM3 + otherShare * other.densityKgpM3,
                own * nitrogenKgpM3 + otherShare * other.nitrogenKgpM3,
                own * sulphurKgpM3 + otherShare * other.sulphurKgpM3);
    }
}
