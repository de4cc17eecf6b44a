package evenfall.wire;

/** {@code $PEVFP}: loop current of the 4–20 mA pressure transmitter. */
public final class PressureCurrent extends HubSentence {

    private static final long LIMIT_UA = 99_999;

    private boolean hasCurrent;
    private long currentUa;

    PressureCurrent() {}

    @Override
    void readRest(Fields fields) {
        hasCurrent = fields.whole(LIMIT_UA);
        currentUa = fields.mantissa();
    }

    /** Returns whether the hub could read the loop. */
    public boolean hasCurrent() {
        return hasCurrent;
    }

    /**
     * Returns the loop current in microamperes, 0 to 99 999; 4000 to 20 000 is the transmitter's range, 0 a broken
     * wire.
     *
     * @throws IllegalStateException when the hub could not read it
     */
    public long currentUa() {
        if (!hasCurrent) {
            throw Absent.of("loop current");
        }
        return currentUa;
    }
}
