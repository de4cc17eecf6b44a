package evenfall.sense;

/**
 * Whether a height sensor on the left is read where its counterpart on the right should be.
 *
 * <p>A wing moves as a whole: as one tip rises against the other, so does the middle of its wing against the other's middle. So the
 * changes, over {@value #OVER_US} µs, of two such differences left less right have the same sign far more often than not. With the leads of
 * one pair changed over they have opposite signs. Wald's sequential test in Page's form counts them, as in {@link HeightDoubts}: against
 * readings whose signs agree by chance, half of the time, stand leads whose signs are opposite {@value #OPPOSITE_WHEN_CROSSED} of the time.
 * So readings that mean nothing reach the {@link #THRESHOLD} no more than once in 100 hours either, and healthy ones never come near it.
 * Changes that the scatter of the readings could make are not counted. Changes and not the heights themselves: a boom may well hang
 * askew, and a sensor too high.
 *
 * <p>With two pairs nobody can say which of them is changed over: each is the mirror of the other. Of three, it is the one that
 * disagrees with the two others. With one pair, or with all changed over, nothing can be told: the mirror image of a boom is a boom.
 */
final class CrossedLeads {
    /** Changes are taken over a second, one after another: a wing that rolls at half a hertz has moved on by then. Our choice. */
    static final long OVER_US = 1_000_000;

    /** Our choice, of what is far beyond a half and yet leaves a wing some freedom to bend. */
    static final double OPPOSITE_WHEN_CROSSED = 0.85;

    /** One false doubt in 100 hours at one change a second (Wald's bound, n = 360,000). */
    static final double THRESHOLD = StrictMath.log(100.0 * 3600);

    /** Weight of the newest reading in a running mean: the mean of five, √(2 − w)/√w less scattered. Our choice: a quarter of a second. */
    private static final double WEIGHT = 1.0 / 3;

    /** Five times the scatter of a change, m: of four means of five readings that scatter by 4 mm each. */
    private static final double LEAST_CHANGE_M = 0.02;

    private static final double OPPOSITE = StrictMath.log(OPPOSITE_WHEN_CROSSED / 0.5);
    private static final double ALIKE = StrictMath.log((1 - OPPOSITE_WHEN_CROSSED) / 0.5);

    private final int[] left;
    private final int[] right;
    private final double[] mean;
    private final double[] before;
    private final double[] change;
    private final double[][] evidence;
    private final boolean[][] opposed;
    private long takenUs = -1;

    /**
     * @param rightM place of each sensor, m to the right of the centre line, from left to right
     * @param hingeM the wings begin here: a sensor within is on none
     */
    CrossedLeads(double[] rightM, double hingeM) {
        int pairs = 0;
        while (2 * pairs + 1 < rightM.length && rightM[pairs] < -hingeM && rightM[rightM.length - 1 - pairs] > hingeM) {
            pairs++;
        }
        left = new int[pairs];
        right = new int[pairs];
        for (int pair = 0; pair < pairs; pair++) {
            left[pair] = pair;
            right[pair] = rightM.length - 1 - pair;
        }
        mean = new double[pairs];
        before = new double[pairs];
        change = new double[pairs];
        evidence = new double[pairs][pairs];
        opposed = new boolean[pairs][pairs];
    }

    /**
     * Takes what all sensors read at one moment.
     *
     * @param timeUs event time, µs
     * @param readsM of each sensor, m; NaN where it heard nothing or is not believed
     */
    void onReadings(long timeUs, double[] readsM) {
        if (left.length < 2) {
            return;
        }
        for (int pair = 0; pair < left.length; pair++) {
            double now = readsM[left[pair]] - readsM[right[pair]];
            // NaN, too, is taken over, and left again at the first reading that is one.
            mean[pair] = Double.isNaN(mean[pair]) ? now : mean[pair] + WEIGHT * (now - mean[pair]);
        }
        long sinceUs = takenUs < 0 ? Long.MAX_VALUE : timeUs - takenUs;
        if (sinceUs >= 0 && sinceUs < OVER_US) {
            return;
        }
        // A change over a silence, or over a clock put back, joins what does not belong together.
        boolean follows = sinceUs >= 0 && sinceUs < 2 * OVER_US;
        takenUs = timeUs;
        for (int pair = 0; pair < left.length; pair++) {
            change[pair] = follows ? mean[pair] - before[pair] : Double.NaN;
            before[pair] = mean[pair];
        }
        for (int one = 0; one < left.length; one++) {
            for (int other = 0; other < one; other++) {
                weigh(one, other);
            }
        }
    }

    private void weigh(int one, int other) {
        if (!(Math.abs(change[one]) >= LEAST_CHANGE_M && Math.abs(change[other]) >= LEAST_CHANGE_M)) {
            return;
        }
        double worth = change[one] * change[other] < 0 ? OPPOSITE : ALIKE;
        double sum = Math.max(0, Math.min(THRESHOLD + 1, evidence[one][other] + worth));
        evidence[one][other] = sum;
        opposed[one][other] = opposed[one][other] ? sum > 0 : sum > THRESHOLD;
        opposed[other][one] = opposed[one][other];
    }

    /** Whether this sensor may be one of those that are changed over. */
    boolean isCrossed(int sensor) {
        for (int pair = 0; pair < left.length; pair++) {
            if (left[pair] == sensor || right[pair] == sensor) {
                return disagreesWithAll(pair);
            }
        }
        return false;
    }

    private boolean disagreesWithAll(int pair) {
        for (int other = 0; other < left.length; other++) {
            if (other != pair && !opposed[pair][other]) {
                return false;
            }
        }
        return left.length > 1;
    }
}
