package evenfall.judge;

import org.jspecify.annotations.Nullable;

/**
 * One alert as it stands.
 *
 * @param kind what is wrong
 * @param place where: {@code boom}, {@code left}, {@code centre}, {@code right}, {@code section-} and its name, or the name of a port or
 *     sensor
 * @param sinceUs when the limit was first passed, µs of event time
 * @param raisedUs when the alert was raised, µs of event time
 * @param value the number that broke the limit, in {@code unit}; null where the alert is about a number that is not known
 * @param limit the limit that it broke, in {@code unit}; null where there is none
 * @param unit unit of both: {@code %}, {@code m}, {@code s}, {@code kPa}, {@code L/min} or {@code 1} for a count
 * @param why one plain sentence with the number
 * @param act what to do, one plain sentence
 */
public record Alert(
        AlertKind kind,
        String place,
        long sinceUs,
        long raisedUs,
        @Nullable Double value,
        @Nullable Double limit,
        String unit,
        String why,
        String act) {}
