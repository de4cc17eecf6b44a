package evenfall.sim.plumbing;

/**
 * The true plumbing. All values are choices of ours for an ordinary machine.
 *
 * @param pumpPa pressure before the regulating valve, Pa: what the pump's relief valve holds
 * @param idlePa the rate controller lets the boom's pressure not fall below about this, Pa
 * @param gainPs how fast the controller turns the valve, as a share of its opening per second, for a flow that is wrong by its
 *     whole self
 * @param strokeS time of the valve from shut to open, s: its fastest
 * @param speedLagS lag of the speed that the cab goes by, s
 * @param meterLagS lag of the flow that the controller goes by, s
 * @param lineLagS lag of the boom's pressure behind the valve with all sections on, s: how much the lines give
 * @param outletSpread standard deviation of the outlets' K, as a share
 * @param lineLoss pressure lost between the boom's feed and its tips with everything on, as a share of the feed's pressure
 * @param lines pump, section lines, wear, and the rate controller's own errors
 */
public record PlumbingSpec(
        double pumpPa,
        double idlePa,
        double gainPs,
        double strokeS,
        double speedLagS,
        double meterLagS,
        double lineLagS,
        double outletSpread,
        double lineLoss,
        Lines lines) {

    /**
     * @param pumpM3ps most that the pump delivers, m³/s
     * @param openS time that a section valve takes to open, s, 0 or above
     * @param closeS time that a section valve takes to shut, s, 0 or above
     * @param dribbleM3 what drains from behind a shut section valve through each outlet once the pressure is gone, m³, 0 or above
     * @param wear how much the outlets' K has grown on average, as a share; between none and twice that
     * @param controllerMeterFactor what the rate controller's meter shows over what flows; 1 is right
     * @param controllerSpeedFactor what the cab's speed shows over what is; 1 is right
     */
    public record Lines(
            double pumpM3ps,
            double openS,
            double closeS,
            double dribbleM3,
            double wear,
            double controllerMeterFactor,
            double controllerSpeedFactor) {

        /** 600 L/min; valves of 0.4 s and 0.3 s; 2 mL of dribble an outlet; new outlets; a controller that is right. Invented. */
        public static Lines ordinary() {
            return new Lines(0.010, 0.4, 0.3, 2e-6, 0, 1, 1);
        }

        /** Section valves that switch at once, with nothing behind them to drain. */
        public Lines withoutDribble() {
            return new Lines(pumpM3ps, 0, 0, 0, wear, controllerMeterFactor, controllerSpeedFactor);
        }
    }

    /** With {@link Lines#ordinary}. */
    public PlumbingSpec(
            double pumpPa,
            double idlePa,
            double gainPs,
            double strokeS,
            double speedLagS,
            double meterLagS,
            double lineLagS,
            double outletSpread,
            double lineLoss) {
        this(pumpPa, idlePa, gainPs, strokeS, speedLagS, meterLagS, lineLagS, outletSpread, lineLoss, Lines.ordinary());
    }

    /** An ordinary machine: settles within two seconds, its outlets alike within 1 %, 3 % lost to the tips. Invented. */
    public static PlumbingSpec ordinary() {
        return new PlumbingSpec(600_000, 40_000, 2.0, 6.0, 0.25, 0.20, 0.10, 0.01, 0.03);
    }

    public PlumbingSpec withLines(Lines other) {
        return new PlumbingSpec(
                pumpPa, idlePa, gainPs, strokeS, speedLagS, meterLagS, lineLagS, outletSpread, lineLoss, other);
    }
}
