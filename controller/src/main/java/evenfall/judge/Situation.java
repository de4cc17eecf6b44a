package evenfall.judge;

import evenfall.pattern.BoomPattern;
import evenfall.pattern.HeightWindow;
import evenfall.sense.Quantity;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * All that judgement looks at, at one moment.
 *
 * @param nowUs event time, µs
 * @param stepS time since the moment before, s
 * @param stepM ground since the moment before, m; 0 where speed is not known
 * @param speedMps ground speed
 * @param rateError share of the target, 0 when they agree
 * @param pressurePa pressure that the pattern rests on
 * @param leftWingM mean height of the outer half of the left wing
 * @param centreM mean height of the centre part
 * @param rightWingM mean height of the outer half of the right wing
 * @param window heights in which this outlet type at this pressure holds the row limit; null where none does or pressure is not
 *     known
 * @param pattern what falls on the rows now; null where that is not known
 * @param ports every port that a sensor needs
 * @param sensors every sensor
 * @param plumbing what flows, at which pressure, through which sections
 */
public record Situation(
        long nowUs,
        double stepS,
        double stepM,
        Quantity speedMps,
        Quantity rateError,
        Quantity pressurePa,
        Quantity leftWingM,
        Quantity centreM,
        Quantity rightWingM,
        @Nullable HeightWindow window,
        @Nullable BoomPattern pattern,
        List<PortState> ports,
        List<SensorState> sensors,
        Plumbing plumbing) {

    /**
     * What flows, at which pressure, through which sections.
     *
     * @param flowM3ps through the meter, m³/s
     * @param pressurePa as measured, Pa; never worked out from the flow
     * @param openOutlets outlets in sections that are switched on; not known where the switches are not
     * @param sectionMask bit 0 is the leftmost section, 1 is on; means nothing where the switches are not known
     * @param tankM3 what the tank holds, m³
     * @param meteredM3 what has passed the meter since it was first heard, m³; only where a tank gauge is fitted
     */
    public record Plumbing(
            Quantity flowM3ps,
            Quantity pressurePa,
            Quantity openOutlets,
            long sectionMask,
            Quantity tankM3,
            Quantity meteredM3) {}

    /**
     * A port as it is heard.
     *
     * @param name the rig's name for it
     * @param silentUs how long since the last good sentence, or since the start, µs
     * @param allowedUs silence up to this is no fault, µs
     * @param hasSpoken whether anything readable has ever come from it
     * @param unplugged whether the device is known to be gone
     * @param sinceRestartUs how long ago the hub on it was seen to start anew, µs; -1 where it was not
     */
    public record PortState(
            String name, long silentUs, long allowedUs, boolean hasSpoken, boolean unplugged, long sinceRestartUs) {
        boolean isSilent() {
            return silentUs > allowedUs;
        }
    }

    /**
     * A sensor as it is heard.
     *
     * @param name the rig's name for it
     * @param port index of its port in the situation's list of them
     * @param reading what it says
     */
    public record SensorState(String name, int port, Quantity reading) {}
}
