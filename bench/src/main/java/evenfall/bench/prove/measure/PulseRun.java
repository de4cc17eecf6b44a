package evenfall.bench.prove.measure;

/**
 * One run past a sensor that counts: between two standstills so much went through, or so far was driven.
 *
 * @param group flow setting or kind of ground, any name
 * @param count what the sensor gave: pulses, or metres where a receiver is tried
 * @param amount what really passed, m³ or m, above 0
 * @param seconds how long it took, s, above 0
 */
public record PulseRun(String group, double count, double amount, double seconds) {
    /** Counts per unit of amount. */
    public double perUnit() {
        return count / amount;
    }

    /** Amount a second: flow in m³/s, or speed in m/s. */
    public double amountPerS() {
        return amount / seconds;
    }
}
