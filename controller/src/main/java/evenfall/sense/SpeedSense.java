package evenfall.sense;

/**
 * Ground speed from the receiver's RMC and VTG; the newest counts.
 *
 * <p>Some receivers go on to send VTG with a speed of zero while RMC says that there is no fix; so where RMC is heard, its status
 * decides about VTG too.
 */
public final class SpeedSense {
    private long heardUs = -1;
    private long speedUs = -1;
    private double speedMps;
    private long voidUs = -1;

    /** An RMC with a fix and a speed, m/s. */
    public void onFix(long timeUs, double mps) {
        voidUs = -1;
        take(timeUs, mps);
    }

    /** An RMC without a fix, or with one but no speed. */
    public void onNoFix(long timeUs) {
        heardUs = timeUs;
        voidUs = timeUs;
    }

    /** A VTG with a speed, m/s. */
    public void onTrack(long timeUs, double mps) {
        if (voidUs >= 0) {
            heardUs = timeUs;
        } else {
            take(timeUs, mps);
        }
    }

    /** A VTG without a speed. */
    public void onNoTrack(long timeUs) {
        heardUs = timeUs;
    }

    private void take(long timeUs, double mps) {
        heardUs = timeUs;
        speedUs = timeUs;
        speedMps = mps;
    }

    /**
     * Ground speed, m/s.
     *
     * @param nowUs event time, µs
     * @param silenceUs older than this it is not known, µs
     */
    public Quantity speedMps(long nowUs, long silenceUs) {
        if (heardUs < 0) {
            return Quantity.unknown(Unknown.NOT_YET, -1);
        }
        if (voidUs < 0 && speedUs >= 0 && nowUs - speedUs <= silenceUs) {
            return Quantity.known(speedMps, nowUs - speedUs);
        }
        long ageUs = nowUs - heardUs;
        return Quantity.unknown(ageUs > silenceUs ? Unknown.SILENT : Unknown.NO_FIX, ageUs);
    }
}
