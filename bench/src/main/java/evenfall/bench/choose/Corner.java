package evenfall.bench.choose;

import org.jspecify.annotations.Nullable;

/**
 * One corner of the range.
 *
 * @param rateM rate as a depth, m
 * @param speedMps speed, m/s
 * @param outletM3ps flow through one outlet, m³/s
 * @param boomM3ps flow of the whole boom, m³/s
 * @param step the metering size that serves it; null where the range is not covered
 * @param pressurePa pressure that it takes, Pa; null likewise
 */
public record Corner(
        double rateM,
        double speedMps,
        double outletM3ps,
        double boomM3ps,
        Cover.@Nullable Step step,
        @Nullable Double pressurePa) {}
