package evenfall.bench.prove.measure;

/**
 * How far off the amounts may be that a sensor is tried against.
 *
 * @param halfWidth of the scale's, jug's or tape's error, the same way in every run, in the amount's unit
 * @param share half width of an error that grows with the amount, over the amount: that of a density; 0 where there is none
 * @param step smallest step of a reading, in the amount's unit
 * @param countStep smallest step of the sensor's count: 1 pulse
 * @param fixedFrom what the half width is of: scale, jug, tape
 * @param shareFrom what the share is of: density, receiver
 */
public record AmountDoubt(
        double halfWidth, double share, double step, double countStep, String fixedFrom, String shareFrom) {
    /**
     * Standard deviation of a run from rounding alone, as a share: each amount and each count is the difference of two readings, each
     * within half a step (GUM F.2.2.1).
     */
    double roundingShare(PulseRun run) {
        double byAmount = step / run.amount();
        double byCount = countStep / Math.max(countStep, run.count());
        return Math.sqrt((byAmount * byAmount + byCount * byCount) / 6);
    }
}
