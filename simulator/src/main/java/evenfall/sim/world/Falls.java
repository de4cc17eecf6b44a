package evenfall.sim.world;

/** What a boom let fall during one step: made once, filled again at every step. Line {@code outlet · streams + stream}. */
final class Falls {
    final int streams;

    /** What left each outlet, m³; none where it is 0 or less. */
    double[] outletM3 = {};

    /** Where each outlet is along the way, m. */
    final double[] outletM;

    /** How far each has come during the step, m. */
    final double[] goneM;

    /** Where the last drop of each line falls, m right of the centre line. */
    final double[] rightM;

    /** The same, m behind where its outlet is; negative where it falls ahead. */
    final double[] backM;

    /** What each line brings, m³. */
    final double[] volumeM3;

    Falls(int outlets, int streams) {
        this.streams = streams;
        outletM = new double[outlets];
        goneM = new double[outlets];
        rightM = new double[outlets * streams];
        backM = new double[outlets * streams];
        volumeM3 = new double[outlets * streams];
    }
}
