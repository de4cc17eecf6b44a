package evenfall.sense;

import org.jspecify.annotations.Nullable;

/**
 * A number with its variance and its age, or no number with the reason: never a number that stands for not knowing.
 *
 * @param number in the SI unit that the field holding it names; NaN when not known. {@link #get} and {@link #value} do not hand that out
 * @param variance of the value about the truth, in that unit squared, 0 or more; 0 where the number is set or counted and has no error of
 *     its own. Of what the monitor cannot see (a wrong K-factor, a sensor mounted elsewhere than the rig says) it knows nothing. NaN
 *     when the value is not known
 * @param ageUs since the newest input that it rests on, µs; for an unknown one since the last input at all, and -1 where there
 *     never was one
 * @param unknown null when the value is known
 */
public record Quantity(
        double number,
        double variance,
        long ageUs,
        @Nullable Unknown unknown) {
    public Quantity {
        if (Double.isNaN(number) == (unknown == null)) {
            throw new IllegalArgumentException("either a value or the reason why there is none");
        }
        if (unknown == null && !(variance >= 0)) {
            throw new IllegalArgumentException("a variance of 0 or more, not " + variance);
        }
    }

    /**
     * A measured number.
     *
     * @param variance in the value's unit squared, 0 or more
     */
    public static Quantity known(double value, double variance, long ageUs) {
        return new Quantity(value, variance, ageUs, null);
    }

    /** A number without an error of its own: set, or counted. */
    public static Quantity known(double value, long ageUs) {
        return new Quantity(value, 0, ageUs, null);
    }

    public static Quantity unknown(Unknown reason, long ageUs) {
        return new Quantity(Double.NaN, Double.NaN, ageUs, reason);
    }

    public boolean isKnown() {
        return unknown == null;
    }

    /** The number; null when not known. */
    public @Nullable Double value() {
        return unknown == null ? number : null;
    }

    /** The number of a known quantity. */
    public double get() {
        if (unknown != null) {
            throw new IllegalStateException("asked for a quantity that is not known: " + unknown);
        }
        return number;
    }

    /** Standard deviation, in the value's unit; NaN when not known. */
    public double sd() {
        return Math.sqrt(variance);
    }
}
