package evenfall.bench.score;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The truth of a run along its way, for pictures beside what the monitor said.
 *
 * @param moments five a second, in order
 */
public record Course(List<Moment> moments) {
    public Course {
        moments = List.copyOf(moments);
    }

    /**
     * @param atS s since the run began
     * @param atM distance driven, m
     * @param speedMps over the ground, m/s
     * @param leftTipM height of the leftmost outlet over the ground, m; negative in the ground
     * @param centreM mean height of the outlets between the hinges, m
     * @param rightTipM height of the rightmost outlet, m
     * @param lowestM the lowest height that keeps the row limit and the clearance at this pressure, m
     * @param highestM the highest that keeps it and the ceiling, m
     * @param rateErrorPct rate over target less 1, percent; null below walking pace and with nothing switched on
     * @param rowCv of the rows under the whole boom, a ratio; null where nothing falls
     */
    public record Moment(
            double atS,
            double atM,
            double speedMps,
            double leftTipM,
            double centreM,
            double rightTipM,
            double lowestM,
            double highestM,
            @Nullable Double rateErrorPct,
            @Nullable Double rowCv) {}
}
