package evenfall.sim.scenario;

import evenfall.liquid.Liquid;
import evenfall.outlet.OutletType;
import evenfall.rig.BoomLayout;
import evenfall.sim.sensor.PressureTransmitter;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is really fitted to the machine.
 *
 * @param boom true outlets, rows and sections
 * @param outlet the outlets as they are at the true spacing
 * @param liquid what is in the tank
 * @param pulsesPerM3 what the flow meter gives; empty when there is none
 * @param heights height sensors from the left
 * @param pressure the transmitter; empty when there is none
 * @param air whether there is an air thermometer
 * @param switches whether the section switches are wired to the hub
 * @param gnss whether there is a receiver
 */
public record FittedSpec(
        BoomLayout boom,
        OutletType outlet,
        Liquid liquid,
        OptionalDouble pulsesPerM3,
        List<Height> heights,
        Optional<PressureTransmitter.Spec> pressure,
        boolean air,
        boolean switches,
        boolean gnss) {
    public FittedSpec {
        heights = List.copyOf(heights);
    }

    /** Density of what is in the tank over that of water. */
    public double specificGravity() {
        return liquid.specificGravity();
    }

    /**
     * @param name for its random stream
     * @param rightM where it looks down from, m right of the centre line
     * @param aboveOutletM how far its face is above the outlets, m
     */
    public record Height(String name, double rightM, double aboveOutletM) {}
}
