package evenfall.bench.prove.measure;

/**
 * One source of doubt about a result.
 *
 * @param name for people
 * @param type how it was found
 * @param standard its standard uncertainty, in the unit of the result
 * @param dof degrees of freedom; infinite where the bounds count as known
 */
public record Component(String name, Type type, double standard, double dof) {
    /** GUM 0.7: by statistics of repeats, or by anything else. */
    public enum Type {
        A,
        B
    }

    /**
     * Found from repeats.
     *
     * @param standard in the unit of the result
     * @param dof degrees of freedom, above 0
     */
    public static Component repeats(String name, double standard, double dof) {
        return new Component(name, Type.A, standard, dof);
    }

    /**
     * Known to lie within ± a half width, any place in it as likely as any other: {@code u = a/√3}, with infinite degrees of
     * freedom (GUM 4.3.7 and G.4.3).
     *
     * @param halfWidth in the unit of the result, 0 or more
     */
    public static Component within(String name, double halfWidth) {
        return new Component(name, Type.B, halfWidth / Math.sqrt(3), Double.POSITIVE_INFINITY);
    }
}
