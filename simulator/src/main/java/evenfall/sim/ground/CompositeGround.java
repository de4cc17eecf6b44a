package evenfall.sim.ground;

import java.util.List;

/** Grounds laid on top of each other: the height is the sum of theirs. */
public final class CompositeGround implements Ground {

    private final Ground[] layers;

    /** @param layers any number; none is level ground */
    public CompositeGround(List<? extends Ground> layers) {
        this.layers = layers.toArray(Ground[]::new);
    }

    @Override
    public double heightM(double xM, double yM) {
        double sum = 0;
        for (Ground layer : layers) {
            sum += layer.heightM(xM, yM);
        }
        return sum;
    }
}
