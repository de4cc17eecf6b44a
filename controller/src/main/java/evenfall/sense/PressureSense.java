package evenfall.sense;

import evenfall.rig.Rig;

/** A pressure transmitter on a 4 to 20 mA loop. */
public final class PressureSense {
    /** Below 3.6 mA or above 21 mA the loop tells of a fault, not of a pressure (NAMUR NE 43, from memory). */
    static final double BROKEN_LOW_A = 0.0036;

    static final double BROKEN_HIGH_A = 0.021;

    private final Rig.Pressure config;
    private long heardUs = -1;
    private double currentA;
    private boolean hasCurrent;

    public PressureSense(Rig.Pressure config) {
        this.config = config;
    }

    public void onCurrent(long timeUs, double amperes) {
        heardUs = timeUs;
        currentA = amperes;
        hasCurrent = true;
    }

    public void onNoCurrent(long timeUs) {
        heardUs = timeUs;
        hasCurrent = false;
    }

    /**
     * Pressure at the transmitter, Pa.
     *
     * @param nowUs event time, µs
     * @param silenceUs older than this it is silent, µs
     */
    public Quantity pressurePa(long nowUs, long silenceUs) {
        if (heardUs < 0) {
            return Quantity.unknown(Unknown.NOT_YET, -1);
        }
        long ageUs = nowUs - heardUs;
        if (ageUs > silenceUs) {
            return Quantity.unknown(Unknown.SILENT, ageUs);
        }
        if (!hasCurrent || currentA < BROKEN_LOW_A || currentA > BROKEN_HIGH_A) {
            return Quantity.unknown(Unknown.LOOP_BROKEN, ageUs);
        }
        double part = (currentA - config.lowA()) / (config.highA() - config.lowA());
        return Quantity.known(config.lowPa() + part * (config.highPa() - config.lowPa()), ageUs);
    }
}
