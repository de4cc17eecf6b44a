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
 *       without a wing whose own height is outside (one cause, one alert) and without rows beside sections that are switched off,
 *       beyond the rig's limit. An alert of either name matches; the cause is scored apart, by the lines: doubled where
 *       {@link #DOUBLED_MORE} more of the liquid lies in doubled lines than at target height and rated pressure, gapped where the
 *       widest gap is {@link #GAP_TIMES} what it is there, or, beside doubled lines, {@link #GAP_BESIDE_DOUBLED}: a line that falls
 *       on its neighbour leaves at most two gaps in one. Both may be so at once, or neither.
 *   <li>{@code pressure-outside}, place {@code boom}: the true pressure at the transmitter outside the window of the outlets that are
 *       fitted, at walking pace or faster with a section on, for the rig's hold.
 *   <li>{@code travel-without-flow}, place {@code boom}: at walking pace or faster with a section on, what leaves the outlets below
 *       {@link #NO_FLOW_PART} of what the target takes, for {@link #NO_FLOW_S}.
 *   <li>{@code flow-without-travel}, place {@code boom}: slower than walking pace or with all sections off, what passes the meter or
 *       leaves the outlets above {@link #RUNS_ON_PART} of what the whole machine takes at target rate and {@link #MACHINE_MPS}, for
 *       {@link #RUNS_ON_S}.
 *   <li>{@code strike-ahead}, places {@code left} and {@code right}: when a tip, the lowest of the outer quarter of the wing's
 *       outlets, comes down to {@link #TOUCH_M}. The alert must stand before. Until the tip is above the rig's clearance again it is
 *       the same contact. One that came down from the target height in less than {@link #TOO_QUICK_S} is too quick to warn of.
 *       The alert is false when the tip does not go under the rig's clearance within {@link #LATE_S} after the rise.
 *   <li>{@code sensor-silent}, {@code speed-lost} and all other kinds: by faults only.
 * </ul>
 *
 * <p><b>Faults.</b> A fault that a scenario scripts is due for any one of the kinds that the library lists for it, once it has shown
 * for as long as {@link FaultSigns} says; for faults that do something to rate, heights or rows that is when the truth passes a limit
 * of one of its kinds. An alert of one of these kinds that rises while it stands, or within {@link #LATE_S} after, is true. A fault
 * that never shows for long enough, or that nothing fitted can tell, is due for nothing.
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
 * <p><b>Blinded.</b> What the truth was due for while a scripted fault had a sensor out of order on which it rests ({@link Blinding}),
 * and what was not raised then, is not missed.
 *
 * <p><b>Misled.</b> What would be false or missed by the truth and is right by what was shown, where that was wrong in a way that no sensor
 * fitted could tell ({@link Unseen}). Counts for neither.
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

    /** More of the liquid in doubled lines than is meant, a ratio: one line in ten. Our choice. */
    static final double DOUBLED_MORE = 0.1;

    /** The widest gap over what is meant: a tenth is what tolerance and a boom that sways make of it anyway. Our choice. */
    static final double GAP_TIMES = 1.1;

    /** The same beside doubled lines: twice, and a tenth. */
    static final double GAP_BESIDE_DOUBLED = 2.2;

    /** Travel without flow: less than this part of what the target takes, for so long, s. */
    static final double NO_FLOW_PART = 0.1;

    static final double NO_FLOW_S = 2;

    /** Flow without travel: more than this part of what the machine takes, for so long, s: a dribble is shorter. */
    static final double RUNS_ON_PART = 0.02;

    static final double RUNS_ON_S = 3;

    /** The speed for that, m/s: 10 km/h. */
    static final double MACHINE_MPS = 10 / 3.6;

    /** A tip this low touches soil or crop, m. */
    static final double TOUCH_M = 0.05;

    /** From the target height to contact in less than this, s: no crew can answer in it. */
    static final double TOO_QUICK_S = 0.6;

    /** Steady running: true speed and flow change by less than this part of themselves over so long, s. */
    static final double STEADY_PART = 0.02;

    static final double STEADY_S = 3;

    /** Near a limit, as a part of it. Our choice. */
    static final double NEAR_PART = 0.2;

    private ScoringRules() {}
}
