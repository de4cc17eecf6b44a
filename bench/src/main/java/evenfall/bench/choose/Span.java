package evenfall.bench.choose;

/**
 * From low to high, both ends in it.
 *
 * @param low the lower end
 * @param high the upper end, at least {@code low}
 */
public record Span(double low, double high) {
    public Span {
        if (!(low <= high)) {
            throw new IllegalArgumentException("a span runs from low to high");
        }
    }

    public boolean contains(double value) {
        return value >= low && value <= high;
    }

    public boolean meets(Span other) {
        return low <= other.high && other.low <= high;
    }

    /** What lies in both; only where they meet. */
    public Span common(Span other) {
        return new Span(Math.max(low, other.low), Math.min(high, other.high));
    }

    /** The middle of ratios: as many times above {@code low} as below {@code high}. Both ends above 0. */
    public double middle() {
        return Math.sqrt(low * high);
    }
}
