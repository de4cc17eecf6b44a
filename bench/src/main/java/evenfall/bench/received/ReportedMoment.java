package evenfall.bench.received;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What one {@code live} message said, as far as it is scored. An estimate, never the truth.
 *
 * @param atS when it was true, s on the clock of the scenario
 * @param arrivalS when it arrived, s on the same clock
 * @param speedMps m/s; null when not known
 * @param flowM3ps through the meter, m³/s; null when not known
 * @param pressurePa at the transmitter, Pa; null when not known
 * @param rateLpha L/ha; null when not known
 * @param targetLpha L/ha
 * @param rateErrorPct share of the target in percent, 0 when they agree; null when not known
 * @param rowCv row CV of the whole boom, a ratio; null when not known
 * @param widthM width that is switched on, m; null when not known
 * @param leftM mean height of the left wing's outlets, m; null when not known
 * @param rightM the same of the right wing
 * @param heights at each height sensor, from the left
 * @param gaps what was not known and why; empty also where nobody took it down
 */
public record ReportedMoment(
        double atS,
        double arrivalS,
        @Nullable Double speedMps,
        @Nullable Double flowM3ps,
        @Nullable Double pressurePa,
        @Nullable Double rateLpha,
        @Nullable Double targetLpha,
        @Nullable Double rateErrorPct,
        @Nullable Double rowCv,
        @Nullable Double widthM,
        @Nullable Double leftM,
        @Nullable Double rightM,
        List<Height> heights,
        List<Gap> gaps) {

    /**
     * @param rightM where the sensor sits, m right of the centre line
     * @param heightM height of the outlets there, m; null when not known
     */
    public record Height(double rightM, @Nullable Double heightM) {}

    /**
     * @param what the quantity, as people call it
     * @param why the monitor's own words
     */
    public record Gap(String what, String why) {}
}
