package evenfall.sim.x;
/** x. */
public final class X {
    private X() {}
}
