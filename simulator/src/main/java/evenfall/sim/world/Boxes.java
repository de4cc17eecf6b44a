package evenfall.sim.world;

import evenfall.sim.chance.Chance;
import evenfall.sim.fault.FaultParts;
import evenfall.sim.fault.MachineTrouble;
import evenfall.sim.fault.OutletMounts;
import evenfall.sim.plumbing.PlumbingTrouble;
import evenfall.sim.scenario.FittedSpec;
import evenfall.sim.scenario.SensorsSpec;
import evenfall.sim.scenario.WorldSpec;
import evenfall.sim.sensor.AirThermometer;
import evenfall.sim.sensor.EchoSensor;
import evenfall.sim.sensor.GnssReceiver;
import evenfall.sim.sensor.HeightSensor;
import evenfall.sim.sensor.PressureTransmitter;
import evenfall.sim.sensor.PulseMeter;
import evenfall.sim.sensor.RadarSensor;
import evenfall.sim.sensor.Scene;
import evenfall.sim.sensor.SensorHub;
import evenfall.sim.sensor.TankGauge;
import evenfall.sim.wire.Uart;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The sensors that are fitted, the hub and the receiver that speak for them, and their lines; each with its own random stream. */
final class Boxes {
    private final Optional<PulseMeter> flow;
    private final Optional<PulseMeter> wheel;
    private final Optional<PressureTransmitter> pressure;
    private final Optional<AirThermometer> air;
    private final SensorHub hub;
    private final Optional<GnssReceiver> gnss;
    private final Uart hubLine;
    private final Uart gnssLine;

    Boxes(WorldSpec spec, long seed, Uart.Listener listener) {
        FittedSpec fitted = spec.fitted();
        SensorsSpec sensors = spec.sensors();
        flow = fitted.pulsesPerM3().isPresent()
                ? Optional.of(new PulseMeter(
                        fitted.pulsesPerM3().getAsDouble(),
                        sensors.flowJitterPeriods(),
                        sensors.flowStartCount(),
                        sensors.flowLeastM3ps(),
                        Chance.stream(seed, "flow")))
                : Optional.empty();
        wheel = sensors.wheelPulsesPerM().isPresent()
                ? Optional.of(
                        new PulseMeter(sensors.wheelPulsesPerM().getAsDouble(), 0, 0, Chance.stream(seed, "wheel")))
                : Optional.empty();
        pressure = fitted.pressure().map(p -> new PressureTransmitter(p, Chance.stream(seed, "pressure")));
        air = fitted.air()
                ? Optional.of(new AirThermometer(sensors.air(), Chance.stream(seed, "air")))
                : Optional.empty();
        List<SensorHub.Echo> heights = new ArrayList<>();
        for (FittedSpec.Height at : fitted.heights()) {
            heights.add(new SensorHub.Echo(at.rightM(), height(at, sensors, seed)));
        }
        hubLine = new Uart(spec.hubPort(), spec.hubBaud(), listener);
        gnssLine = new Uart(spec.gnssPort(), spec.gnssBaud(), listener);
        hub = new SensorHub(
                spec.hub(),
                hubLine,
                flow,
                wheel,
                heights,
                pressure,
                air,
                sensors.tank().map(t -> new TankGauge(t, Chance.stream(seed, "tank"))),
                fitted.switches(),
                Chance.stream(seed, "hub"));
        gnss = fitted.gnss()
                ? Optional.of(new GnssReceiver(spec.gnss(), gnssLine, Chance.stream(seed, "gnss")))
                : Optional.empty();
    }

    private static HeightSensor height(FittedSpec.Height at, SensorsSpec sensors, long seed) {
        Chance chance = Chance.stream(seed, "height " + at.name());
        return sensors.radar().isPresent()
                ? new RadarSensor(sensors.radar().get(), at.aboveOutletM(), chance)
                : new EchoSensor(sensors.echo(), at.aboveOutletM(), chance);
    }

    /** What of the machine faults can touch. */
    FaultParts parts(PlumbingTrouble plumbing, OutletMounts mounts, MachineTrouble machine) {
        return new FaultParts(
                plumbing, mounts, hub.trouble(), flow, wheel, pressure, air, gnss, List.of(hubLine, gnssLine), machine);
    }

    /** Lets liquid go through the meter and ground under the wheel, evenly during a step. */
    void pass(long startUs, long stepUs, double meteredM3, double drivenM) {
        if (flow.isPresent()) {
            flow.get().pass((double) startUs, (double) stepUs, meteredM3);
        }
        if (wheel.isPresent()) {
            wheel.get().pass((double) startUs, (double) stepUs, drivenM);
        }
    }

    /** Sends what is due. */
    void at(long timeUs, Scene scene) {
        hub.at(timeUs, scene);
        if (gnss.isPresent()) {
            gnss.get().at(timeUs, scene);
        }
    }
}
