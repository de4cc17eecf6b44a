package evenfall.sim.ground;

/**
 * A round hill; with a height below zero, a round hollow.
 *
 * @param xM its top, forward along the pass, m
 * @param yM its top, to the right, m
 * @param radiusM distance at which it has run out, m, above 0
 * @param topM height of its top, m
 */
public record Knoll(double xM, double yM, double radiusM, double topM) implements Feature {

    public Knoll {
        Smooth.requirePositive(radiusM, "radius of a knoll, m,");
    }

    @Override
    public double heightM(double x, double y) {
        double u = ((x - xM) * (x - xM) + (y - yM) * (y - yM)) / (radiusM * radiusM);
        double left = Math.max(0.0, 1.0 - u);
        return topM * left * left;
    }
}
