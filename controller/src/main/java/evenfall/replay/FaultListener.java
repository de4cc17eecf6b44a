package evenfall.replay;

/** Is told of the unexpected. */
@FunctionalInterface
public interface FaultListener {
    /**
     * The core met something that it should not, and was started anew.
     *
     * @param timeUs event time, µs
     */
    void coreRestarted(long timeUs, RuntimeException unexpected);
}
