package evenfall.sense;

/** Which boom sections are switched on. */
public final class SectionSense {
    private long heardUs = -1;
    private long mask;

    /**
     * Takes a reading of the switches.
     *
     * @param timeUs event time of arrival, µs
     * @param onMask bit 0 is the leftmost section, 1 is on
     */
    public void onSwitches(long timeUs, long onMask) {
        heardUs = timeUs;
        mask = onMask;
    }

    /**
     * Whether the switches are known: a known quantity of 1, or the reason why not.
     *
     * @param nowUs event time, µs
     * @param silenceUs older than this they are not known, µs
     */
    public Quantity known(long nowUs, long silenceUs) {
        if (heardUs < 0) {
            return Quantity.unknown(Unknown.NOT_YET, -1);
        }
        long ageUs = nowUs - heardUs;
        return ageUs > silenceUs ? Quantity.unknown(Unknown.SILENT, ageUs) : Quantity.known(1, ageUs);
    }

    public boolean isOn(int section) {
        return (mask >> section & 1) == 1;
    }
}
