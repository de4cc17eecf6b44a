package evenfall.sim.world;

import evenfall.outlet.OutletType;
import evenfall.outlet.Stream;
import evenfall.sim.fault.OutletMounts;
import evenfall.sim.jet.Landings;
import evenfall.sim.jet.OutletStates;

/** What a boom let fall during one step: made once, filled again at every step. */
final class Falls {
    /** Standard gravity (3rd General Conference on Weights and Measures, 1901). */
    private static final double GRAVITY_MPS2 = 9.80665;

    /** Where the last drop of each line falls, and how much it brings, m³. */
    final Landings lines;

    /** What left each outlet in its streams, m³; none where it is 0 or less. */
    double[] outletM3 = {};

    /** What leaked beside them, m³; it drips straight down. */
    final double[] leakedM3;

    /** Whether anything leaked. */
    boolean leaks;

    /** Where each outlet is, m right of the centre line. */
    final double[] outletRightM;

    /** Where each outlet is along the way, m. */
    final double[] outletM;

    /** How far each has come during the step, m. */
    final double[] goneM;

    Falls(double[] outletRightM, int streams) {
        this.outletRightM = outletRightM;
        int outlets = outletRightM.length;
        lines = new Landings(outlets, streams);
        leakedM3 = new double[outlets];
        outletM = new double[outlets];
        goneM = new double[outlets];
    }

    /**
     * Turns the lines of outlets that sit crooked on the boom. What an outlet gives its liquid turns with it, the machine's own speed
     * does not.
     *
     * @param type the outlets
     * @param states what the lines have been made from
     * @param travelMps travel speed that they have been made with, m/s
     */
    void turn(OutletMounts mounts, OutletType type, OutletStates states, double travelMps) {
        for (int i = 0; i < outletM.length; i++) {
            if (!mounts.isChanged(i)) {
                continue;
            }
            double overGroundMps = travelMps + states.forwardMps()[i];
            for (int k = 0; k < lines.streams(); k++) {
                Stream stream = type.streams().get(k);
                double downMps = states.speedFactor()[i] * stream.exitMps() * stream.downPart() - states.upMps()[i];
                double carriedM = overGroundMps * fallS(downMps, states.heightM()[i]);
                double right = lines.rightM()[k][i] - outletRightM[i];
                double back = lines.backM()[k][i] + carriedM;
                lines.rightM()[k][i] = outletRightM[i] + mounts.rightM(i, right, back);
                lines.backM()[k][i] = mounts.backM(i, right, back) - carriedM;
            }
        }
    }

    /** Time of free fall, s: near enough to tell what the machine's speed carries from what the outlet throws. */
    private static double fallS(double downMps, double heightM) {
        double height = Math.max(0, heightM);
        return (-downMps + Math.sqrt(downMps * downMps + 2 * GRAVITY_MPS2 * height)) / GRAVITY_MPS2;
    }
}
