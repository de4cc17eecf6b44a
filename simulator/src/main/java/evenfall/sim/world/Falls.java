package evenfall.sim.world;

import evenfall.sim.jet.Landings;

/** What a boom let fall during one step: made once, filled again at every step. */
final class Falls {
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
}
