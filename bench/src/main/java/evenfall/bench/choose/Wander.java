package evenfall.bench.choose;

/**
 * How far the boom wanders from its set height.
 *
 * @param kind how {@code metres} is meant
 * @param metres 0 or more
 */
public record Wander(Kind kind, double metres) {
    /** What the number says. */
    public enum Kind {
        /** A standard deviation: heights lie on a bell curve, cut at three of them. */
        STANDARD_DEVIATION,
        /** A bound to either side: every height in between is as frequent as any other. */
        WITHIN
    }

    /** Heights that are looked at; with more of them no figure moves by as much as it is rounded to. */
    private static final int STEPS = 61;

    private static final double CUT = 3;

    /** One height and how much of the time the boom is there; the shares sum to 1. */
    record Visit(double heightM, double share) {}

    Visit[] visits(double setM) {
        if (metres == 0) {
            return new Visit[] {new Visit(setM, 1)};
        }
        double[] offset = new double[STEPS];
        double[] weight = new double[STEPS];
        double sum = 0;
        for (int i = 0; i < STEPS; i++) {
            // The middles of equal steps from -1 to 1.
            double at = (2.0 * i + 1 - STEPS) / STEPS;
            boolean bell = kind == Kind.STANDARD_DEVIATION;
            offset[i] = (bell ? CUT : 1) * at * metres;
            weight[i] = bell ? StrictMath.exp(-0.5 * CUT * CUT * at * at) : 1;
            sum += weight[i];
        }
        Visit[] visits = new Visit[STEPS];
        for (int i = 0; i < STEPS; i++) {
            visits[i] = new Visit(setM + offset[i], weight[i] / sum);
        }
        return visits;
    }
}
