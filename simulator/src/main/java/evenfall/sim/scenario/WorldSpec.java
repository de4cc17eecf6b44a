package evenfall.sim.scenario;

import evenfall.sim.boom.BoomSpec;
import evenfall.sim.drive.DrivePlan;
import evenfall.sim.drive.SectionPlan;
import evenfall.sim.fault.ScriptedFault;
import evenfall.sim.ground.Feature;
import evenfall.sim.ground.Ground;
import evenfall.sim.ground.RoughnessClass;
import evenfall.sim.plumbing.PlumbingSpec;
import evenfall.sim.sensor.GnssReceiver;
import evenfall.sim.sensor.SensorHub;
import evenfall.sim.vehicle.ChassisSpec;
import java.util.List;
import java.util.Optional;

/**
 * A world as it is.
 *
 * @param fitted what the machine carries
 * @param roughness class of the ground; empty where it is level between its features
 * @param features on the ground
 * @param surveyed heights of a survey under all of that; empty where there are none
 * @param drive where and how fast it is driven
 * @param chassis its wheels
 * @param boom its boom
 * @param plumbing its rate controller and line
 * @param targetRateM what the operator has set on the rate controller, m³/m²
 * @param sections when sections are switched
 * @param idealStreams streams are thin lines in a vacuum
 * @param airC temperature of the air, °C
 * @param faults what goes wrong on the way
 * @param sensors what the sensors get wrong
 * @param hub the sensor hub
 * @param hubPort where the hub's bytes go
 * @param hubBaud at what rate
 * @param gnss the receiver
 * @param gnssPort where its bytes go
 * @param gnssBaud at what rate
 */
public record WorldSpec(
        FittedSpec fitted,
        Optional<RoughnessClass> roughness,
        List<Feature> features,
        Optional<Ground> surveyed,
        DrivePlan drive,
        ChassisSpec chassis,
        BoomSpec boom,
        PlumbingSpec plumbing,
        double targetRateM,
        SectionPlan sections,
        boolean idealStreams,
        double airC,
        List<ScriptedFault> faults,
        SensorsSpec sensors,
        SensorHub.Spec hub,
        String hubPort,
        int hubBaud,
        GnssReceiver.Spec gnss,
        String gnssPort,
        int gnssBaud) {
    public WorldSpec {
        features = List.copyOf(features);
        faults = List.copyOf(faults);
    }
}
