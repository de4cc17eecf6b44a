package evenfall.sim.world;

import evenfall.outlet.OutletType;
import evenfall.outlet.Stream;
import evenfall.sim.fault.OutletMounts;
import evenfall.sim.jet.Landings;
import evenfall.sim.jet.OutletStates;

/**
 * What a boom let fall during several steps: made once, filled again and again. Arrays without a stream are indexed by
 * {@code step · outlets + outlet}, as those of {@link Landings}.
 */
final class Falls {
    /** Standard gravity (3rd General Conference on Weights and Measures, 1901). */
    private static final double GRAVITY_MPS2 = 9.80665;

    /** How many outlets there are. */
    final int outlets;

    /** How many steps are in here. */
    int steps;

    /** Where the last drop of each line falls, and how much it brings, m³. */
    final Landings lines;

    /** What left each outlet in its streams, m³; none where it is 0 or less. */
    final double[] outletM3;

    /** What leaked beside them, m³; it drips straight down. */
    final double[] leakedM3;

    /** Whether anything may have leaked. */
    boolean leaks;

    /** Where each outlet is, m right of the centre line. */
    final double[] outletRightM;

    /** Where each outlet is along the way, m. */
    final double[] outletM;

    /** How far each has come during the step, m. */
    final double[] goneM;

    /**
     * @param states of the outlets that let it fall
     * @param streams of each outlet
     */
    Falls(OutletStates states, int streams, int steps) {
        outlets = states.outlets();
        outletRightM = states.rightM();
        outletM3 = states.quantity();
        lines = new Landings(outlets, streams, steps);
        leakedM3 = new double[outlets * steps];
        outletM = new double[outlets * steps];
        goneM = new double[outlets * steps];
    }

    /** How many lines of each stream are in here. */
    int places() {
        return steps * outlets;
    }

    /**
     * Turns the lines of outlets that sit crooked on the boom. What an outlet gives its liquid turns with it, the machine's own speed
     * does not.
     *
     * @param type the outlets
     * @param states what the lines have been made from
     * @param travelMps travel speed that they have been made with at each step, m/s
     */
    void turn(OutletMounts mounts, OutletType type, OutletStates states, double[] travelMps) {
        for (int i = 0; i < places(); i++) {
            int outlet = i % outlets;
            if (!mounts.isChanged(outlet)) {
                continue;
            }
            double overGroundMps = travelMps[i / outlets] + states.forwardMps()[i];
            for (int k = 0; k < lines.streams(); k++) {
                Stream stream = type.streams().get(k);
                double downMps = states.speedFactor()[i] * stream.exitMps() * stream.downPart() - states.upMps()[i];
                double carriedM = overGroundMps * fallS(downMps, states.heightM()[i]);
                double right = lines.rightM()[k][i] - outletRightM[i];
                double back = lines.backM()[k][i] + carriedM;
                lines.rightM()[k][i] = outletRightM[i] + mounts.rightM(outlet, right, back);
                lines.backM()[k][i] = mounts.backM(outlet, right, back) - carriedM;
            }
        }
    }

    /** Time of free fall, s: near enough to tell what the machine's speed carries from what the outlet throws. */
    private static double fallS(double downMps, double heightM) {
        double height = Math.max(0, heightM);
        return (-downMps + Math.sqrt(downMps * downMps + 2 * GRAVITY_MPS2 * height)) / GRAVITY_MPS2;
    }
}
