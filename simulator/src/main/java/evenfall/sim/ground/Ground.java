package evenfall.sim.ground;

/** The height of the ground. The same point has the same height at every call. */
@FunctionalInterface
public interface Ground {

    /**
     * Height of the ground over the scenario's datum, m, up.
     *
     * @param xM forward along the pass, m
     * @param yM to the right of the pass, m
     */
    double heightM(double xM, double yM);

    /**
     * Heights of many places: the same numbers as place by place, perhaps in less time.
     *
     * @param xM forward along the pass, m
     * @param yM to the right of the pass, m
     * @param into takes the heights, m
     * @param n how many, from the beginning of each array
     */
    default void heightsM(double[] xM, double[] yM, double[] into, int n) {
        for (int i = 0; i < n; i++) {
            into[i] = heightM(xM[i], yM[i]);
        }
    }

    /** Level ground at the datum. */
    static Ground level() {
        return (xM, yM) -> 0.0;
    }
}
