package evenfall.sim.boom;

/**
 * How a boom sways in the horizontal: it yaws about its hanging point, and its wings bend fore and aft.
 *
 * <p>The two frequencies are those of the parts. Together the boom has other ones: yaw and the bending that
 * goes with it share the wings' mass, so that the slow mode of both is slower than either and the fast one
 * several times faster; both wings bending the same way keep the frequency of the wing, since the machine
 * does not give way.
 *
 * @param yawHz natural frequency of the yaw with the wings held straight, Hz; infinite for a boom that
 *     cannot yaw against the chassis
 * @param yawDampingRatio share of critical damping of the slow mode of yaw and bending, 0 or above
 * @param bendingHz natural frequency of a wing's first fore-and-aft bending with the centre held, Hz;
 *     infinite for a wing that does not bend
 * @param bendingDampingRatio share of critical damping of the other bending, 0 or above
 * @param yawPerCrossSlope how far the machine is turned off its path when the ground under its wheels gets
 *     this much steeper to the right, rad per m/m, 0 or above: the wheel that climbs is held back. Only tyres
 *     that slip sideways resist that, so to a first approximation it does not depend on speed
 * @param steeringS time constant with which the driver steers that out again, s, above 0
 * @param pitchArmM height of the boom over the point that the chassis pitches about, m: a nose that goes up
 *     throws the boom back
 */
public record SwaySpec(
        double yawHz,
        double yawDampingRatio,
        double bendingHz,
        double bendingDampingRatio,
        double yawPerCrossSlope,
        double steeringS,
        double pitchArmM) {

    public SwaySpec {
        BoomSpec.requireAboveNothing(yawHz, "yaw frequency of the boom, Hz,");
        BoomSpec.requireNotNegative(yawDampingRatio, "yaw damping ratio of the boom");
        BoomSpec.requireAboveNothing(bendingHz, "fore-and-aft bending frequency of a wing, Hz,");
        BoomSpec.requireNotNegative(bendingDampingRatio, "fore-and-aft bending damping ratio of a wing");
        BoomSpec.requireNotNegative(yawPerCrossSlope, "yaw per cross slope, rad per m/m,");
        BoomSpec.requireNotNegative(pitchArmM, "pitch arm of the boom, m,");
        if (!(steeringS > 0 && steeringS < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("steering of the driver, s, must be above 0, not " + steeringS);
        }
    }

    /** A boom that stays where a rigid one on a machine that keeps its path exactly would be. */
    public static SwaySpec none() {
        return new SwaySpec(Double.POSITIVE_INFINITY, 0, Double.POSITIVE_INFINITY, 0, 0, 1, 0);
    }

    /**
     * For a machine of 36 m. Frequencies and damping are from memory (0.5 to 1 Hz, lightly damped), the rest
     * is a choice of ours. The yaw per cross slope is the balance of the wheels' moments for 15 t on a track b of
     * 3.0 m and a wheelbase l of 3.8 m: weight · b² over what four tyres of 100 kN/rad resist, 4C · l².
     */
    public static SwaySpec wide36() {
        return new SwaySpec(0.75, 0.15, 1.0, 0.06, 0.23, 2.0, 1.0);
    }

    /** For a machine of 24 m, stiffer in both; see {@link #wide36()}. */
    public static SwaySpec wide24() {
        return new SwaySpec(0.9, 0.15, 1.3, 0.06, 0.23, 2.0, 1.0);
    }

    boolean isNone() {
        return yawHz == Double.POSITIVE_INFINITY
                && bendingHz == Double.POSITIVE_INFINITY
                && yawPerCrossSlope == 0
                && pitchArmM == 0;
    }
}
