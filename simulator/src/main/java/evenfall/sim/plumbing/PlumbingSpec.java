package evenfall.sim.plumbing;

/**
 * The true plumbing. All values are choices of ours for an ordinary machine.
 *
 * @param pumpPa pressure before the regulating valve, Pa
 * @param idlePa the rate controller lets the boom's pressure not fall below about this, Pa
 * @param gainPs how fast the controller turns the valve, as a share of its opening per second, for a flow that is wrong by its
 *     whole self
 * @param strokeS time of the valve from shut to open, s: its fastest
 * @param speedLagS lag of the speed that the cab goes by, s
 * @param meterLagS lag of the flow that the controller goes by, s
 * @param lineLagS lag of the boom's pressure behind the valve, s
 * @param outletSpread standard deviation of the outlets' K, as a share
 * @param lineLoss pressure lost between the boom's feed and its tips with everything on, as a share of the feed's pressure
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
        double lineLoss) {

    /** An ordinary machine: settles within two seconds, its outlets alike within 1 %, 3 % lost to the tips. Invented. */
    public static PlumbingSpec ordinary() {
        return new PlumbingSpec(600_000, 40_000, 2.0, 6.0, 0.25, 0.20, 0.10, 0.01, 0.03);
    }
}
