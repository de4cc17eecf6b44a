package evenfall.sim.boom;

import java.util.List;

/**
 * The machine's own height control: heights seen at a few places, averaged and late, drive the tilt of
 * each wing and the lift of the centre at limited speed.
 *
 * @param sensorRightM where it looks down from, m right of the centre; those beyond a wing's hinge drive
 *     that wing, the others the lift; none at all is a machine without height control
 * @param averagingS time constant of its averaging, s, 0 or above
 * @param delayS time from an averaged height to the movement it causes, s, 0 or above
 * @param deadBandM height error up to which it does nothing, m, 0 or above
 * @param gainPerS speed it asks for per height error beyond the dead band, 1/s, 0 or above
 * @param tipSlewMps greatest speed of a wing's tip, m/s, 0 or above
 * @param liftSlewMps greatest speed of the centre lift, m/s, 0 or above
 * @param wingTravelMpm greatest tilt of a wing either way, m per m
 * @param liftTravelM greatest lift either way from the set height, m
 */
public record HeightControlSpec(
        List<Double> sensorRightM,
        double averagingS,
        double delayS,
        double deadBandM,
        double gainPerS,
        double tipSlewMps,
        double liftSlewMps,
        double wingTravelMpm,
        double liftTravelM) {

    public HeightControlSpec {
        sensorRightM = List.copyOf(sensorRightM);
        BoomSpec.requireNotNegative(averagingS, "averaging of the height control, s,");
        BoomSpec.requireNotNegative(delayS, "delay of the height control, s,");
        BoomSpec.requireNotNegative(deadBandM, "dead band of the height control, m,");
        BoomSpec.requireNotNegative(gainPerS, "gain of the height control, 1/s,");
        BoomSpec.requireNotNegative(tipSlewMps, "tip speed of the height control, m/s,");
        BoomSpec.requireNotNegative(liftSlewMps, "lift speed of the height control, m/s,");
        BoomSpec.requireNotNegative(wingTravelMpm, "wing travel of the height control, m/m,");
        BoomSpec.requireNotNegative(liftTravelM, "lift travel of the height control, m,");
    }

    /** No height control: wings and lift stay where they are. */
    public static HeightControlSpec none() {
        return new HeightControlSpec(List.of(), 0, 0, 0, 0, 0, 0, 0, 0);
    }

    /** A usual one looking down from these places. Invented; its lag is 0.3 s of averaging and 0.4 s of delay. */
    public static HeightControlSpec usual(List<Double> sensorRightM) {
        return new HeightControlSpec(sensorRightM, 0.3, 0.4, 0.05, 0.8, 0.5, 0.3, 0.25, 0.8);
    }
}
