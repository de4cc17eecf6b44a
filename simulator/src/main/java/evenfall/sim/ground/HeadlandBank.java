package evenfall.sim.ground;

/**
 * The bank at the field's edge: up, along its crest, and down on the far side.
 *
 * @param crossing where it begins to rise
 * @param heightM height of the crest, m, 0 or above
 * @param slopeM length of each slope, m, above 0
 * @param crestM length of the crest, m, 0 or above
 */
public record HeadlandBank(Crossing crossing, double heightM, double slopeM, double crestM) implements Feature {

    public HeadlandBank {
        Smooth.requireNotNegative(heightM, "height of a headland bank, m,");
        Smooth.requirePositive(slopeM, "slope of a headland bank, m,");
        Smooth.requireNotNegative(crestM, "crest of a headland bank, m,");
    }

    @Override
    public double heightM(double xM, double yM) {
        double past = crossing.pastM(xM, yM);
        double profile = Smooth.step(past / slopeM) - Smooth.step((past - slopeM - crestM) / slopeM);
        return crossing.share(xM, yM) * heightM * profile;
    }
}
