package evenfall.bench.prove.measure;

/**
 * A named limit of a proof; its value may be set by who proves.
 *
 * @param name as in {@code --limit NAME=VALUE}: lower-case words joined by hyphens
 * @param title what must not be passed, for people
 * @param value the largest that is allowed, in {@link #unit}
 * @param unit of the value, as in the key of the result file: pct, mm, s …
 * @param source who says so
 */
public record Limit(String name, String title, double value, String unit, String source) {

    /** The same limit, set by hand. */
    public Limit set(double other) {
        return new Limit(name, title, other, unit, "set by hand; else " + source);
    }

    /**
     * @param measured in {@link #unit}, without sign
     */
    public Finding judge(double measured) {
        return new Finding(this, measured, measured <= value);
    }
}
