package evenfall.bench.x;
/** x. */
public final class X {
    private X() {}
}
