package evenfall.bench.prove.measure;

/**
 * A measure beside its limit.
 *
 * @param limit what is allowed
 * @param measured in the limit's unit
 * @param met whether it is within
 */
public record Finding(Limit limit, double measured, boolean met) {}
