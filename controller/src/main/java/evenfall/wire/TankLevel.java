package evenfall.wire;

/** {@code $PEVFL}: what the level gauge in the tank reads. */
public final class TankLevel extends HubSentence {

    private static final long LIMIT_COUNTS = 65_535; // a 16-bit register's end

    private boolean hasCounts;
    private long counts;

    TankLevel() {}

    @Override
    void readRest(Fields fields) {
        hasCounts = fields.whole(LIMIT_COUNTS);
        counts = fields.mantissa();
    }

    /** Returns whether the hub could read the gauge. */
    public boolean hasCounts() {
        return hasCounts;
    }

    /**
     * Returns the gauge's own counts, 0 to 65 535; what they mean in litres is the rig's business.
     *
     * @throws IllegalStateException when the hub could not read it
     */
    public long counts() {
        if (!hasCounts) {
            throw Absent.of("tank level");
        }
        return counts;
    }
}
