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

    /** Level ground at the datum. */
    static Ground level() {
        return (xM, yM) -> 0.0;
    }
}
