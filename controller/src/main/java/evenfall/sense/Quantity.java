package evenfall.sense;

import org.jspecify.annotations.Nullable;

/**
 * A number with its age, or no number with the reason: never a number that stands for not knowing.
 *
 * @param value in the SI unit that the field holding it names; null when not known
 * @param ageUs since the newest input that it rests on, µs; for an unknown one since the last input at all, and -1 where there
 *     never was one
 * @param unknown null when the value is known
 */
public record Quantity(
        @Nullable Double value, long ageUs, @Nullable Unknown unknown) {
    public Quantity {
        if ((value == null) == (unknown == null)) {
            throw new IllegalArgumentException("either a value or the reason why there is none");
        }
    }

    public static Quantity known(double value, long ageUs) {
        return new Quantity(value, ageUs, null);
    }

    public static Quantity unknown(Unknown reason, long ageUs) {
        return new Quantity(null, ageUs, reason);
    }

    public boolean isKnown() {
        return value != null;
    }

    /** The number of a known quantity. */
    public double get() {
        if (value == null) {
            throw new IllegalStateException("asked for a quantity that is not known: " + unknown);
        }
        return value;
    }
}
