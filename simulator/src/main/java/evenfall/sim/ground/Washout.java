package evenfall.sim.ground;

/**
 * A gully cut by water: steep banks and a flat bottom.
 *
 * @param crossing its centre
 * @param depthM depth, m, 0 or above
 * @param bottomM width of the flat bottom, m, 0 or above
 * @param bankM width of each bank, m, above 0
 */
public record Washout(Crossing crossing, double depthM, double bottomM, double bankM) implements Feature {

    public Washout {
        Smooth.requireNotNegative(depthM, "depth of a washout, m,");
        Smooth.requireNotNegative(bottomM, "bottom of a washout, m,");
        Smooth.requirePositive(bankM, "bank of a washout, m,");
    }

    @Override
    public double heightM(double xM, double yM) {
        double upTheBank = (Math.abs(crossing.pastM(xM, yM)) - bottomM / 2) / bankM;
        return crossing.share(xM, yM) * depthM * (Smooth.step(upTheBank) - 1.0);
    }
}
