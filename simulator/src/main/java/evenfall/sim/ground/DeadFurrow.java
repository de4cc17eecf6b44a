package evenfall.sim.ground;

/**
 * The furrow left open where two ploughed lands part, with the low shoulders beside it.
 *
 * @param crossing its centre
 * @param depthM depth under the land, m, 0 or above
 * @param widthM width of the furrow, m, above 0; each shoulder is as wide
 * @param shoulderM height of the shoulders over the land, m, 0 or above
 */
public record DeadFurrow(Crossing crossing, double depthM, double widthM, double shoulderM) implements Feature {

    public DeadFurrow {
        Smooth.requireNotNegative(depthM, "depth of a dead furrow, m,");
        Smooth.requirePositive(widthM, "width of a dead furrow, m,");
        Smooth.requireNotNegative(shoulderM, "shoulder of a dead furrow, m,");
    }

    @Override
    public double heightM(double xM, double yM) {
        double fromCentre = Math.abs(crossing.pastM(xM, yM));
        double profile = shoulderM * Smooth.bump(2.0 * (fromCentre - widthM) / widthM)
                - depthM * Smooth.bump(2.0 * fromCentre / widthM);
        return crossing.share(xM, yM) * profile;
    }
}
