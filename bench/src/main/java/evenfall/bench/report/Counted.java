package evenfall.bench.report;

/** A count with its word. */
public final class Counted {
    private Counted() {}

    /**
     * @param one the word for one thing, of a kind that takes an s, or es after an x
     * @return such as {@code 1 fix} or {@code 3 fixes}
     */
    public static String text(long count, String one) {
        return count + " " + (count == 1 ? one : one + (one.endsWith("x") ? "es" : "s"));
    }
}
