package evenfall.wire;

/** {@code $PEVFS}: which boom sections are switched on. */
public final class SectionSwitches extends HubSentence {

    /** As many sections as one sentence may carry. */
    public static final int MOST_SECTIONS = 32;

    private boolean hasMask;
    private long mask;

    SectionSwitches() {}

    @Override
    void readRest(Fields fields) {
        hasMask = fields.hex32();
        mask = fields.mantissa();
    }

    /** Returns whether the hub could read the switches. */
    public boolean hasMask() {
        return hasMask;
    }

    /**
     * Returns all switches: bit 0 is the leftmost section, 1 is on; 0 to 4 294 967 295.
     *
     * @throws IllegalStateException when the hub could not read them
     */
    public long mask() {
        if (!hasMask) {
            throw Absent.of("section switches");
        }
        return mask;
    }

    /**
     * Returns whether one section is switched on.
     *
     * @param section 0 for the leftmost, to 31
     * @throws IllegalStateException when the hub could not read the switches
     * @throws IndexOutOfBoundsException when there can be no such section
     */
    public boolean isOn(int section) {
        if (section < 0 || section >= MOST_SECTIONS) {
            throw new IndexOutOfBoundsException(section);
        }
        return (mask() >>> section & 1) == 1;
    }
}
