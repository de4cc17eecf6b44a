package evenfall.monitor;

import evenfall.judge.Alert;
import evenfall.pattern.HeightWindow;
import evenfall.pattern.LineMeasures;
import evenfall.pattern.RowMeasures;
import evenfall.sense.Quantity;
import evenfall.sense.Unknown;
import evenfall.wire.WireCounts;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The state of things at one moment.
 *
 * @param timeUs event time, µs
 * @param speedMps ground speed
 * @param flowM3ps flow through the meter
 * @param pressurePa at the transmitter
 * @param widthM width that is switched on
 * @param rateM product on the ground as a depth, m³/m² (1e-7 is 1 L/ha)
 * @param rateError share of the target, 0 when they agree
 * @param sensorHeightM height of the outlets at each height sensor of the rig, over what the sensor sees
 * @param sensorRateMps how fast each of those heights changes, m/s, positive as it grows
 * @param boom the rows under the whole boom
 * @param segments left, centre and right
 * @param window heights in which this outlet type at this pressure holds the row limit; null where none does, or pressure is not
 *     known
 * @param standing alerts that stand, oldest first
 * @param wire what the decoders counted, all ports together
 * @param droppedBytes bytes lost to full queues before they came here
 */
public record Live(
        long timeUs,
        Quantity speedMps,
        Quantity flowM3ps,
        Quantity pressurePa,
        Quantity widthM,
        Quantity rateM,
        Quantity rateError,
        List<Quantity> sensorHeightM,
        List<Quantity> sensorRateMps,
        Segment boom,
        List<Segment> segments,
        @Nullable HeightWindow window,
        List<Alert> standing,
        WireCounts wire,
        long droppedBytes) {

    /**
     * A stretch of the boom.
     *
     * @param name {@code boom}, {@code left}, {@code centre} or {@code right}
     * @param heightM mean height of its outlets
     * @param rows what its rows get; null when not known
     * @param lines how its landing lines lie; null when not known
     * @param unknown why rows and lines are not known; null when they are
     */
    public record Segment(
            String name,
            Quantity heightM,
            @Nullable RowMeasures rows,
            @Nullable LineMeasures lines,
            @Nullable Unknown unknown) {}
}
