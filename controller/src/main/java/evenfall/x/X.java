package evenfall.x;
/** x. */
public final class X {
    private X() {}
}
