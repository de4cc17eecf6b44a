package evenfall.bench.score;

/**
 * How a run is scored; {@code bench/docs/scoring.md} says the same for people.
 *
 * <p><b>Figures.</b> The true row CV is that of all rows under the whole boom, the adjoining pass taken as the mirror image; the
 * true rate error is defined where the machine is faster than walking pace and something is switched on. Both are taken at five
 * moments a second. What the monitor reported is taken from its {@code live} messages. Where both are known, a message is set
 * beside the true moment nearest in time, at most {@link #PAIR_WITHIN_S} apart; {@code points} are the differences in percentage
 * points, and p95 is the 95th percentile of their magnitude. Percentiles interpolate linearly between order statistics.
 *
 * <p><b>What is past its limit in truth.</b>
 *
 * <ul>
 *   <li>{@code rate-high}, {@code rate-low}, place {@code boom}: the rate error beyond the rig's limit.
 *   <li>{@code wing-low}, {@code wing-high}, places {@code left} and {@code right}: the mean height of the outer half of the
 *       wing's outlets outside what the wing may take. That is the height window of the outlet type at the true pressure and
 *       density (row CV within the rig's limit around the target height), and never below the rig's clearance nor above its
 *       ceiling. Where every height holds, or not even the target height does, only clearance and ceiling count.
 *   <li>{@code bands-gapped}, {@code bands-doubled}, place {@code boom}: the row CV over the segments left, centre and right,
 *       without a wing whose own height is outside (one cause, one alert), beyond the rig's limit; doubled where the mean height
 *       of those segments is above the target height, else gapped.
 *   <li>{@code sensor-silent}, {@code speed-lost} and all other kinds: by faults only.
 * </ul>
 *
 * <p><b>Faults.</b> A fault that a scenario scripts is due for any one of the kinds that the library lists for it, from the moment it
 * comes. An alert of one of these kinds that rises while it stands, or within {@link #LATE_S} after, is true. A fault that stands for
 * {@link #FAULT_WITHIN_S} without one is missed. A fault that nothing fitted could tell is due for nothing.
 *
 * <p><b>Due.</b> An alert is due at the moment when its limit has been passed without a break for the rig's hold, in seconds and
 * in metres driven. It counts when the limit stays passed for at least {@link #COUNTS_AFTER_S} beyond that moment, or when it was
 * raised.
 *
 * <p><b>Matched.</b> An alert of the monitor matches a due one of the same kind and place when it stands at some moment from the
 * start of the exceedance to {@link #LATE_S} after its end. One that stands across several exceedances matches each.
 *
 * <p><b>Missed.</b> A due alert that counts and was not standing within {@link #LATE_S} after it was due. Where the run ends
 * before that, nothing is said.
 *
 * <p><b>False.</b> An alert that matches no due one, and where the truth was not even near the limit within {@link #LATE_S} of
 * the rise. Near is within {@link #NEAR_PART} of the limit; for heights, of the way from the target height to the limit. An alert
 * that is neither due nor false was raised on a near miss, or on an exceedance too short for its hold: it is listed with no due
 * time.
 */
final class ScoringRules {
    /** Between a message and the true moment beside it, s. */
    static final double PAIR_WITHIN_S = 0.15;

    /** A due alert must stay due for so long to be counted, s: a monitor that waits for noise to pass is not wrong. Our choice. */
    static final double COUNTS_AFTER_S = 1;

    /** An alert this much late is of no use to a driver any more, s. Our choice. */
    static final double LATE_S = 3;

    /** A fault that stands so long must have been noticed, s. Our choice: at 10 km/h it is 28 m of ground. */
    static final double FAULT_WITHIN_S = 10;

    /** Near a limit, as a part of it. Our choice. */
    static final double NEAR_PART = 0.2;

    private ScoringRules() {}
}
