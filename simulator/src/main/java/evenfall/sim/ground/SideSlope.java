package evenfall.sim.ground;

/**
 * Land that leans sideways: a plane that rises to the right, from a place along the pass on.
 *
 * @param rightMpm rise to the right, m per m (below zero it falls to the right)
 * @param fromM where it begins, m along the pass; minus infinity for a plane without beginning
 * @param runInM length over which the level land twists into the slope, m, above 0
 */
public record SideSlope(double rightMpm, double fromM, double runInM) implements Feature {

    public SideSlope {
        Smooth.requirePositive(runInM, "run-in of a side slope, m,");
    }

    /** The same slope everywhere. */
    public static SideSlope everywhere(double rightMpm) {
        return new SideSlope(rightMpm, Double.NEGATIVE_INFINITY, 1.0);
    }

    @Override
    public double heightM(double xM, double yM) {
        return rightMpm * yM * Smooth.step((xM - fromM) / runInM);
    }
}
