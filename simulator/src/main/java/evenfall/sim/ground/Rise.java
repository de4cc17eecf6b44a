package evenfall.sim.ground;

/**
 * The land goes up (or down) to another level and stays there.
 *
 * @param crossing where the ramp begins
 * @param heightM how much higher the land is after it, m; below zero it drops
 * @param lengthM length of the ramp, m, above 0
 */
public record Rise(Crossing crossing, double heightM, double lengthM) implements Feature {

    public Rise {
        Smooth.requirePositive(lengthM, "length of a rise, m,");
    }

    @Override
    public double heightM(double xM, double yM) {
        return crossing.share(xM, yM) * heightM * Smooth.step(crossing.pastM(xM, yM) / lengthM);
    }
}
