package evenfall.wire;

/** Speeds as receivers print them, in metres per second. */
final class Speed {

    /** No receiver of ours moves faster; a larger number is not a speed. */
    private static final long LIMIT = 2_000;

    private Speed() {}

    /** A knot is 1852 m in 3600 s (BIPM, The International System of Units, 8th edition, 2006, table 8). */
    static double fromKnots(Fields fields) {
        fields.atMost(LIMIT);
        return (double) (fields.mantissa() * 1852) / (3600 * fields.scale());
    }

    /** A kilometre per hour is 1000 m in 3600 s. */
    static double fromKilometresPerHour(Fields fields) {
        fields.atMost(2 * LIMIT);
        return (double) (fields.mantissa() * 5) / (18 * fields.scale());
    }
}
