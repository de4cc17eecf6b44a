package evenfall.sense;

/**
 * Ground speed from the receiver's RMC and VTG; the newest counts.
 *
 * <p>Some receivers go on to send VTG with a speed of zero while RMC says that there is no fix; so where RMC is heard, its status
 * decides about VTG too.
 */
public final class SpeedSense {
    /** More than a second of a receiver that says RMC and VTG twenty times a second. */
    private static final int KEPT = 64;

    private final long[] keptUs = new long[KEPT];
    private final double[] keptMps = new double[KEPT];
    private int newest;
    private int kept;
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
        newest = (newest + 1) % KEPT;
        keptUs[newest] = timeUs;
        keptMps[newest] = mps;
        kept = Math.min(kept + 1, KEPT);
    }

    /**
     * Mean ground speed over a stretch of time in the past, for what was measured in that stretch.
     *
     * @param fromUs event time, µs
     * @param toUs event time, µs
     * @return m/s; the newest speed where none was heard in the stretch
     */
    public double meanMps(long fromUs, long toUs) {
        double sum = 0;
        int n = 0;
        for (int back = 0; back < kept; back++) {
            int i = Math.floorMod(newest - back, KEPT);
            if (keptUs[i] < fromUs) {
                break;
            }
            if (keptUs[i] <= toUs) {
                sum += keptMps[i];
                n++;
            }
        }
        return n == 0 ? speedMps : sum / n;
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
