package evenfall.ledger;

import evenfall.pattern.Fall;
import evenfall.sense.PositionSense;
import evenfall.sense.Quantity;
import evenfall.sense.Unknown;
import org.jspecify.annotations.Nullable;

/**
 * What the monitor knows at one moment. Compared by identity; the arrays in it are the monitor's own and hold during the call only.
 *
 * @param timeUs event time, µs
 * @param stepS since the moment before, s: what is known now is taken to have held for so long
 * @param flowM3ps flow through the meter
 * @param speedMps ground speed
 * @param carriedMps ground speed while the flow was measured, m/s; counts only where flow and speed are known
 * @param widthM width that is switched on
 * @param open whether each outlet is switched on; counts only where the width is known
 * @param fall what falls; null where it is not known
 * @param unknown why it is not; null where it is
 * @param heightsAgeUs age of the oldest height, µs; -1 without one
 * @param fix where the antenna is; null where that is not known
 * @param placeUnknown why it is not; null where it is
 */
@SuppressWarnings("ArrayRecordComponent")
public record Moment(
        long timeUs,
        double stepS,
        Quantity flowM3ps,
        Quantity speedMps,
        double carriedMps,
        Quantity widthM,
        boolean[] open,
        @Nullable Fall fall,
        @Nullable Unknown unknown,
        long heightsAgeUs,
        PositionSense.@Nullable Fix fix,
        @Nullable Unknown placeUnknown) {}
