package evenfall.sim.boom;

import java.util.List;

/**
 * A boom hung at its centre, with two wings that bend and are tilted about hinges.
 *
 * @param halfWidthM from the centre to a wing's tip, m
 * @param hingeM from the centre to a wing's hinge: half the stiff centre section, m, below halfWidthM
 * @param setHeightM height over level ground that it is set to, m
 * @param rollModeHz natural frequency of its roll against the chassis, Hz; infinite when it is bolted on
 * @param rollDampingRatio share of critical damping of that roll, 0 or above
 * @param rollCoupling share of the chassis's roll that its place of rest takes over at once, 0 to 1: the
 *     springs and links between them
 * @param levellingS time constant with which it takes over the rest, s, 0 or above: the slow levelling to
 *     the slope
 * @param bendingHz natural frequency of a wing's first bending, Hz; infinite for a wing that does not bend
 * @param bendingDampingRatio share of critical damping of the bending, 0 or above
 * @param wingTaper how much of its mass per metre a wing has lost at the tip, 0 (even) to below 1
 * @param control the machine's own height control
 * @param sway how it moves in the horizontal
 * @param soil how the soil carries a wing that strikes it
 */
public record BoomSpec(
        double halfWidthM,
        double hingeM,
        double setHeightM,
        double rollModeHz,
        double rollDampingRatio,
        double rollCoupling,
        double levellingS,
        double bendingHz,
        double bendingDampingRatio,
        double wingTaper,
        HeightControlSpec control,
        SwaySpec sway,
        SoilContactSpec soil) {

    /** A boom that does not sway and that goes through the soil unhindered. */
    public BoomSpec(
            double halfWidthM,
            double hingeM,
            double setHeightM,
            double rollModeHz,
            double rollDampingRatio,
            double rollCoupling,
            double levellingS,
            double bendingHz,
            double bendingDampingRatio,
            double wingTaper,
            HeightControlSpec control) {
        this(
                halfWidthM,
                hingeM,
                setHeightM,
                rollModeHz,
                rollDampingRatio,
                rollCoupling,
                levellingS,
                bendingHz,
                bendingDampingRatio,
                wingTaper,
                control,
                SwaySpec.none(),
                SoilContactSpec.none());
    }

    public BoomSpec {
        requirePositive(halfWidthM, "half width of the boom, m,");
        requireNotNegative(hingeM, "hinge of the boom, m,");
        if (hingeM >= halfWidthM) {
            throw new IllegalArgumentException(
                    "hinge of the boom, m, must be below its half width " + halfWidthM + ", not " + hingeM);
        }
        requirePositive(setHeightM, "set height of the boom, m,");
        requireShare(rollCoupling, rollCoupling <= 1, "roll coupling of the boom must be 0 to 1");
        requireNotNegative(levellingS, "levelling of the boom, s,");
        requireShare(wingTaper, wingTaper < 1, "taper of the wings must be 0 to below 1");
        for (double sensor : control.sensorRightM()) {
            if (!(Math.abs(sensor) <= halfWidthM)) {
                throw new IllegalArgumentException("height sensor at " + sensor
                        + " m is not on the boom, which reaches " + halfWidthM + " m to each side");
            }
        }
    }

    /** A machine of 36 m for outlets set at 0.50 m. Invented. */
    public static BoomSpec wide36() {
        return new BoomSpec(
                18.3,
                2.5,
                0.50,
                0.4,
                0.5,
                0.25,
                6.0,
                1.2,
                0.08,
                0.6,
                HeightControlSpec.usual(List.of(-16.5, -9.0, 0.0, 9.0, 16.5)),
                SwaySpec.wide36(),
                SoilContactSpec.usual());
    }

    /** A machine of 24 m for outlets set at 0.50 m. Invented. */
    public static BoomSpec wide24() {
        return new BoomSpec(
                12.2,
                2.0,
                0.50,
                0.5,
                0.5,
                0.25,
                6.0,
                1.5,
                0.08,
                0.6,
                HeightControlSpec.usual(List.of(-11.0, 0.0, 11.0)),
                SwaySpec.wide24(),
                SoilContactSpec.usual());
    }

    /** A boom bolted to the chassis that neither rolls on its own, nor bends, nor is controlled. */
    public static BoomSpec rigid(double halfWidthM, double setHeightM) {
        return new BoomSpec(
                halfWidthM,
                0,
                setHeightM,
                Double.POSITIVE_INFINITY,
                0,
                1,
                0,
                Double.POSITIVE_INFINITY,
                0,
                0,
                HeightControlSpec.none());
    }

    /** The same boom with another control. */
    public BoomSpec withControl(HeightControlSpec other) {
        return new BoomSpec(
                halfWidthM,
                hingeM,
                setHeightM,
                rollModeHz,
                rollDampingRatio,
                rollCoupling,
                levellingS,
                bendingHz,
                bendingDampingRatio,
                wingTaper,
                other,
                sway,
                soil);
    }

    /** The same boom set to another height. */
    public BoomSpec withSetHeightM(double otherM) {
        return new BoomSpec(
                halfWidthM,
                hingeM,
                otherM,
                rollModeHz,
                rollDampingRatio,
                rollCoupling,
                levellingS,
                bendingHz,
                bendingDampingRatio,
                wingTaper,
                control,
                sway,
                soil);
    }

    /** The same boom that sways otherwise. */
    public BoomSpec withSway(SwaySpec other) {
        return new BoomSpec(
                halfWidthM,
                hingeM,
                setHeightM,
                rollModeHz,
                rollDampingRatio,
                rollCoupling,
                levellingS,
                bendingHz,
                bendingDampingRatio,
                wingTaper,
                control,
                other,
                soil);
    }

    /** The same boom over other soil. */
    public BoomSpec withSoil(SoilContactSpec other) {
        return new BoomSpec(
                halfWidthM,
                hingeM,
                setHeightM,
                rollModeHz,
                rollDampingRatio,
                rollCoupling,
                levellingS,
                bendingHz,
                bendingDampingRatio,
                wingTaper,
                control,
                sway,
                other);
    }

    /** Above 0, and perhaps infinite: a part that does not move. */
    static void requireAboveNothing(double value, String what) {
        if (!(value > 0)) {
            throw new IllegalArgumentException(what + " must be above 0, not " + value);
        }
    }

    static void requireNotNegative(double value, String what) {
        if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(what + " must be 0 or above, not " + value);
        }
    }

    private static void requirePositive(double value, String what) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(what + " must be above 0, not " + value);
        }
    }

    private static void requireShare(double value, boolean below, String rule) {
        if (!(value >= 0 && below)) {
            throw new IllegalArgumentException(rule + ", not " + value);
        }
    }
}
