package evenfall.bench.prove.measure;

import java.util.List;
import org.hipparchus.stat.descriptive.rank.Median;
import org.jspecify.annotations.Nullable;

/**
 * How a sensor follows a target that moves at once: what it lags, the boom lags.
 *
 * @param delayS from the step to a tenth of the way, s
 * @param riseS from a tenth to nine tenths of the way, s
 * @param stepM how far the step went, m, without sign
 */
public record StepResponse(double delayS, double riseS, double stepM) {
    /** A step must stand out of the noise; a choice of ours. */
    public static final double LEAST_STEP_M = 0.05;

    private static final int FEWEST_EACH_SIDE = 5;

    /**
     * @param timeS when a reading arrived, s
     * @param distanceM what it said, m
     */
    public record Reading(double timeS, double distanceM) {}

    /** The step until what it settled at is reached, s. */
    public double settledS() {
        return delayS + riseS;
    }

    /**
     * @param readings in the order of their arrival
     * @param markS when the target moved, s
     * @return null when there are too few readings on a side, the step is too small or never gets there
     */
    public static @Nullable StepResponse of(List<Reading> readings, double markS) {
        double[] before = readings.stream()
                .filter(r -> r.timeS() < markS)
                .mapToDouble(Reading::distanceM)
                .toArray();
        double[] after = readings.stream()
                .filter(r -> r.timeS() >= markS)
                .mapToDouble(Reading::distanceM)
                .toArray();
        if (before.length < FEWEST_EACH_SIDE || after.length < 2 * FEWEST_EACH_SIDE) {
            return null;
        }
        double fromM = new Median().evaluate(before);
        double toM = new Median().evaluate(java.util.Arrays.copyOfRange(after, after.length / 2, after.length));
        if (Math.abs(toM - fromM) < LEAST_STEP_M) {
            return null;
        }
        double tenthS = crossing(readings, markS, fromM, toM, 0.1);
        double nineTenthsS = crossing(readings, markS, fromM, toM, 0.9);
        if (Double.isNaN(tenthS) || Double.isNaN(nineTenthsS)) {
            return null;
        }
        return new StepResponse(Math.max(0, tenthS - markS), Math.max(0, nineTenthsS - tenthS), Math.abs(toM - fromM));
    }

    /** When a share of the way is reached for the first time, between two readings in proportion; NaN when it never is. */
    private static double crossing(List<Reading> readings, double markS, double fromM, double toM, double share) {
        double lastS = markS;
        double lastShare = 0;
        for (Reading reading : readings) {
            double done = (reading.distanceM() - fromM) / (toM - fromM);
            if (reading.timeS() < markS) {
                continue;
            }
            if (done >= share) {
                double part = done == lastShare ? 1 : (share - lastShare) / (done - lastShare);
                return lastS + Math.max(0, Math.min(1, part)) * (reading.timeS() - lastS);
            }
            lastS = reading.timeS();
            lastShare = done;
        }
        return Double.NaN;
    }
}
