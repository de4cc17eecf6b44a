package evenfall.sense;

import java.util.ArrayList;
import java.util.List;

/**
 * Which of a boom's height sensors are not to be believed, each held against the others.
 *
 * <p>Two running tests of evidence, for each sensor (Wald's sequential test in Page's form, E. S. Page, Biometrika 1954): each reading
 * adds the logarithm of how much likelier it is of a faulty sensor than of a healthy one, and never below 0. Evidence of
 * {@code ln(n)} comes about by chance at most once in n readings (Wald's bound). With 20 readings a second and one false doubt in 100
 * hours of each sensor, n is 7.2 million and the threshold 15.8.
 *
 * <ul>
 *   <li><b>Stuck.</b> A stuck sensor repeats its reading always, a healthy one as often as its neighbours do: each repeat is worth
 *       {@code −ln} of their share of repeats, but at most 3, and nothing while most of the others repeat theirs too; the
 *       first other reading takes all evidence away. Where all stand still, nothing can be told, and nothing is.
 *   <li><b>Scattered.</b> The {@link FourthDifference fourth differences} of a healthy sensor have the middle variance {@code σ²} of its
 *       neighbours'; those of a loose one, or of one that hears double echoes, have 25 times that (five times the standard deviation, our
 *       choice of what is far beyond). A difference d adds {@code d²/2σ² · (1 − 1/25) − ln 5}, for a normal distribution; but at most
 *       {@value #MOST_OF_DIFFERENCE}, so that an edge, which enters five of them, is not taken for a fault.
 * </ul>
 *
 * <p>A third, {@link CrossedLeads}, holds pairs against one another.
 */
public final class HeightDoubts {
    /** One false doubt in 100 hours of each sensor at 20 readings a second. */
    static final double THRESHOLD = StrictMath.log(100.0 * 3600 * 20);

    /** A reading within so many µs of the one before repeats it: the count's own rounding, 0.2 mm. */
    private static final long REPEAT_US = 1;

    private static final double MOST_OF_REPEAT = 3;

    /** Five times the scatter of the others. */
    private static final double FAR_BEYOND = 5;

    private static final double LN_FAR_BEYOND = StrictMath.log(FAR_BEYOND);

    private static final double MOST_OF_DIFFERENCE = 1.5;

    /** The least square of a difference that a healthy sensor is taken to have, m²: that of 2 mm of scatter. */
    private static final double LEAST_M2 = FourthDifference.GAIN * 0.002 * 0.002;

    /** Weight of the newest in what is known of a sensor's habits: the last 5 s. Our choice. */
    private static final double WEIGHT = 0.01;

    /** Readings that differ again, in a row, before a stuck sensor is believed: half a second. Our choice. */
    private static final int MOVES_AGAIN = 10;

    private final List<HeightSense> senses;
    private final long[] lastUs;
    private final List<FourthDifference> differences = new ArrayList<>();
    private final int[] inRow;
    private final double[] repeatShare;
    private final double[] usualM2;
    private final double[] stuck;
    private final double[] scattered;
    private final int[] moved;
    private final double[] nowM2;
    private final double[] repeatNow;
    private final boolean[] isStuck;
    private final boolean[] isScattered;
    private final double[] others;
    private final double[] readsM;
    private final CrossedLeads crossed;

    /**
     * @param senses of the whole boom, from left to right
     * @param rightM place of each, m to the right of the centre line
     * @param hingeM the wings begin here, m from the centre line
     */
    public HeightDoubts(List<HeightSense> senses, double[] rightM, double hingeM) {
        this.senses = List.copyOf(senses);
        crossed = new CrossedLeads(rightM, hingeM);
        readsM = new double[senses.size()];
        int n = senses.size();
        lastUs = new long[n];
        inRow = new int[n];
        repeatShare = new double[n];
        usualM2 = new double[n];
        stuck = new double[n];
        scattered = new double[n];
        moved = new int[n];
        nowM2 = new double[n];
        repeatNow = new double[n];
        isStuck = new boolean[n];
        isScattered = new boolean[n];
        others = new double[n];
        for (int i = 0; i < n; i++) {
            differences.add(new FourthDifference());
            // Before anything is known a repeat is nothing strange.
            repeatShare[i] = 1;
            usualM2[i] = LEAST_M2;
        }
    }

    /**
     * Takes a reading of one sensor; the others' come in turn.
     *
     * @param sensor its place in the list
     * @param roundTripUs its echo, µs
     * @param airC air temperature, °C
     */
    public void onEcho(int sensor, long roundTripUs, double airC) {
        double readsM = senses.get(sensor).distanceM(roundTripUs, airC);
        if (inRow[sensor] >= 1) {
            lookForRepeat(sensor, Math.abs(roundTripUs - lastUs[sensor]) <= REPEAT_US);
        }
        double square = differences.get(sensor).squareWith(readsM);
        if (!Double.isNaN(square)) {
            lookAtScatter(sensor, square);
        }
        lastUs[sensor] = roundTripUs;
        inRow[sensor]++;
        this.readsM[sensor] = isStuck[sensor] || isScattered[sensor] ? Double.NaN : readsM;
    }

    /**
     * All sensors have been heard that were asked at one moment.
     *
     * @param timeUs that moment in event time, µs
     */
    public void onAllHeard(long timeUs) {
        crossed.onReadings(timeUs, readsM);
        for (int i = 0; i < readsM.length; i++) {
            senses.get(i).doubt(doubtOf(i));
        }
    }

    private Unknown doubtOf(int sensor) {
        return isStuck[sensor]
                ? Unknown.STUCK
                : isScattered[sensor]
                        ? Unknown.SCATTERED
                        : crossed.isCrossed(sensor) ? Unknown.CROSSED : Unknown.NOT_YET;
    }

    /** No echo says nothing either way. */
    public void onNoEcho(int sensor) {
        inRow[sensor] = 0;
        readsM[sensor] = Double.NaN;
        differences.get(sensor).cut();
    }

    private void lookForRepeat(int sensor, boolean repeats) {
        repeatNow[sensor] = repeats ? 1 : 0;
        if (repeats) {
            moved[sensor] = 0;
            // When the whole boom comes to a stand, all begin to repeat at once.
            boolean allStand = middleOfOthers(sensor, repeatNow, isStuck) > 0;
            double share = allStand ? 1 : middleOfOthers(sensor, repeatShare, isStuck);
            stuck[sensor] += Double.isNaN(share) ? 0 : Math.min(MOST_OF_REPEAT, -StrictMath.log(share));
            isStuck[sensor] |= stuck[sensor] > THRESHOLD;
        } else {
            stuck[sensor] = 0;
            moved[sensor]++;
            isStuck[sensor] &= moved[sensor] < MOVES_AGAIN;
        }
        repeatShare[sensor] += WEIGHT * ((repeats ? 1 : 0) - repeatShare[sensor]);
    }

    private void lookAtScatter(int sensor, double squaredM2) {
        nowM2[sensor] = squaredM2;
        double middleM2 = middleOfOthers(sensor, usualM2, isScattered);
        if (Double.isNaN(middleM2)) {
            return;
        }
        double othersM2 = Math.max(LEAST_M2, middleM2);
        double evidence = 0;
        // Where that says nothing against it, what they do now could say it less still.
        if (scattered[sensor] > 0 || worth(squaredM2, othersM2) > 0) {
            // When the whole boom is shaken, all bend at once.
            double nowM2OfOthers = middleOfOthers(sensor, nowM2, isScattered);
            double worth = worth(squaredM2, Math.max(othersM2, nowM2OfOthers));
            evidence = Math.max(0, Math.min(THRESHOLD + 1, scattered[sensor] + Math.min(MOST_OF_DIFFERENCE, worth)));
        }
        scattered[sensor] = evidence;
        isScattered[sensor] = isScattered[sensor] ? evidence > 0 : evidence > THRESHOLD;
        // An edge must not make a sensor look used to edges.
        double usual = Math.min(squaredM2, 9 * Math.max(LEAST_M2, usualM2[sensor]));
        usualM2[sensor] += WEIGHT * (usual - usualM2[sensor]);
    }

    /** By how much likelier a difference is of a faulty sensor, as a logarithm. */
    private static double worth(double squaredM2, double othersM2) {
        return 0.5 * squaredM2 / othersM2 * (1 - 1 / (FAR_BEYOND * FAR_BEYOND)) - LN_FAR_BEYOND;
    }

    /** The middle of what the other sensors do that are believed; for two the greater; NaN where there is none. */
    private double middleOfOthers(int sensor, double[] habit, boolean[] disbelieved) {
        int n = 0;
        for (int i = 0; i < habit.length; i++) {
            if (i != sensor && !disbelieved[i] && inRow[i] > 0) {
                others[n++] = habit[i];
            }
        }
        // By how many are less, for the few that there are: a sort's questions would each be a toss-up.
        for (int i = 0; i < n; i++) {
            int less = 0;
            int same = 0;
            for (int j = 0; j < n; j++) {
                less += others[j] < others[i] ? 1 : 0;
                same += others[j] == others[i] ? 1 : 0;
            }
            if (less <= n / 2 && n / 2 < less + same) {
                return others[i];
            }
        }
        return Double.NaN;
    }
}
