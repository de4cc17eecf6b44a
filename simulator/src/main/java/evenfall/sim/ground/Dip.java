package evenfall.sim.ground;

/**
 * A hollow across the pass, rounded.
 *
 * @param crossing where it is deepest
 * @param depthM depth, m, 0 or above
 * @param lengthM from edge to edge, m, above 0
 */
public record Dip(Crossing crossing, double depthM, double lengthM) implements Feature {

    public Dip {
        Smooth.requireNotNegative(depthM, "depth of a dip, m,");
        Smooth.requirePositive(lengthM, "length of a dip, m,");
    }

    @Override
    public double heightM(double xM, double yM) {
        return -crossing.share(xM, yM) * depthM * Smooth.bump(2.0 * crossing.pastM(xM, yM) / lengthM);
    }
}
