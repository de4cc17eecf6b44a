package evenfall.sim.plumbing;

/**
 * The machine's own rate controller and the valve that it turns.
 *
 * <p>It wants {@code A · v · W} with the speed that the cab shows, which is late and may be wrong; it compares that with its own
 * meter's reading, which is late and may be wrong too, and turns the valve at a speed in proportion to the difference, never faster
 * than the valve's motor goes. It knows what the section switches say, not what the sections do.
 */
final class RateController {
    /** The valve's smallest opening: it does not shut, the section valves do that. */
    private static final double LEAST_OPENING = 0.01;

    /** Period in which a hunting valve swings, s; a choice of ours. */
    private static final double SWING_S = 3;

    private final PlumbingSpec spec;
    private final double targetRateM;
    private double opening;
    private double cabSpeedMps;
    private double meteredM3ps;
    private double meterFactor;
    private double speedFactor;
    private double swing;
    private double swingS;
    private boolean stuck;

    RateController(PlumbingSpec spec, double targetRateM, double speedMps) {
        this.spec = spec;
        this.targetRateM = targetRateM;
        meterFactor(1);
        speedFactor(1);
        cabSpeedMps = speedMps * speedFactor;
    }

    void meterFactor(double beside) {
        meterFactor = spec.lines().controllerMeterFactor() * beside;
    }

    void speedFactor(double beside) {
        speedFactor = spec.lines().controllerSpeedFactor() * beside;
    }

    /** @param share amplitude, as a share of the opening; 0 and it does not swing */
    void swing(double share) {
        swing = share;
        swingS = 0;
    }

    void stuck(boolean on) {
        stuck = on;
    }

    /** True flow that it goes for at its reading of the speed, m³/s. */
    double wantedM3ps(double widthM, double idleM3ps) {
        return Math.max(targetRateM * cabSpeedMps * widthM, idleM3ps) / meterFactor;
    }

    /** As if it had long been here. */
    void settle(double atOpening, double flowM3ps) {
        opening = clamp(atOpening, LEAST_OPENING, 1);
        meteredM3ps = flowM3ps * meterFactor;
    }

    /**
     * Goes on by one step.
     *
     * @param passesM3ps what passes its meter, liquid and air
     * @param widthM what the section switches say, m
     * @param idleM3ps flow at the least pressure that it goes to
     */
    void step(double dtS, double speedMps, double passesM3ps, double widthM, double idleM3ps) {
        cabSpeedMps += (speedMps * speedFactor - cabSpeedMps) * dtS / spec.speedLagS();
        meteredM3ps += (passesM3ps * meterFactor - meteredM3ps) * dtS / spec.meterLagS();
        if (widthM > 0 && !stuck) {
            double wantedM3ps = Math.max(targetRateM * cabSpeedMps * widthM, idleM3ps);
            double turnPs = spec.gainPs() * opening * (wantedM3ps - meteredM3ps) / wantedM3ps;
            if (swing > 0) {
                double omega = 2 * StrictMath.PI / SWING_S;
                turnPs += swing * omega * opening * StrictMath.cos(omega * swingS);
                swingS += dtS;
            }
            double fastestPs = 1 / spec.strokeS();
            opening = clamp(opening + dtS * clamp(turnPs, -fastestPs, fastestPs), LEAST_OPENING, 1);
        }
    }

    /** The valve's opening, above 0 to 1. */
    double opening() {
        return opening;
    }

    private static double clamp(double value, double least, double most) {
        return Math.max(least, Math.min(most, value));
    }
}
