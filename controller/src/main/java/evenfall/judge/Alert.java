package evenfall.judge;

import org.jspecify.annotations.Nullable;

/**
 * One alert as it stands.
 *
 * @param kind what is wrong
 * @param place where: {@code boom}, {@code left}, {@code centre}, {@code right}, or the name of a port or sensor
 * @param sinceUs when the limit was first passed, µs of event time
 * @param raisedUs when the alert was raised, µs of event time
 * @param value the number that broke the limit, in {@code unit}; null where the alert is about a number that is not known
 * @param limit the limit that it broke, in {@code unit}
 * @param unit unit of both: {@code %}, {@code m} or {@code s}
 * @param why one plain sentence with the number
 * @param act what to do, one plain sentence
 */
public record Alert(
        AlertKind kind,
        String place,
        long sinceUs,
        long raisedUs,
        @Nullable Double value,
        double limit,
        String unit,
        String why,
        String act) {}
