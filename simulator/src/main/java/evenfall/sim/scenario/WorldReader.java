package evenfall.sim.scenario;

import evenfall.config.ConfigException;
import evenfall.config.ConfigNode;
import evenfall.outlet.OutletDesign;
import evenfall.quantity.TradeUnits;
import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import evenfall.sim.boom.BoomSpec;
import evenfall.sim.boom.HeightControlSpec;
import evenfall.sim.ground.RoughnessClass;
import evenfall.sim.plumbing.PlumbingSpec;
import evenfall.sim.sensor.AirThermometer;
import evenfall.sim.sensor.EchoSensor;
import evenfall.sim.sensor.GnssReceiver;
import evenfall.sim.sensor.HubClock;
import evenfall.sim.sensor.SensorHub;
import evenfall.sim.vehicle.ChassisSpec;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Reads the {@code world} part of a scenario. */
final class WorldReader {
    private final ConfigNode world;
    private final Rig belief;
    private final Path folder;

    WorldReader(ConfigNode world, Rig belief, Path folder) {
        this.world = world;
        this.belief = belief;
        this.folder = folder;
    }

    WorldSpec read(Optional<OutletDesign> outletOverride) throws ConfigException {
        FittedSpec fitted = new FittedReader(world, belief, folder).read(outletOverride);
        ConfigNode ground = world.at("ground");
        String roughness = ground.text("roughness");
        ConfigNode sensors = group(world, "sensors");
        ConfigNode flow = group(sensors, "flow");
        ConfigNode air = group(sensors, "air");
        Rig.Port hubPort = port(world.at("hub"));
        Rig.Port gnssPort = port(world.at("gnss"));
        if (hubPort.name().equals(gnssPort.name())) {
            throw world.at("gnss").wrong("port", "is the hub's port too", "a port of its own");
        }
        return new WorldSpec(
                fitted,
                roughness.equals("level") ? Optional.empty() : Optional.of(RoughnessClass.valueOf(roughness)),
                FeatureReader.read(ground),
                drive(world.at("drive")),
                ChassisSpec.selfPropelled(),
                boom(world.at("machine"), fitted.boom()),
                plumbing(group(world, "plumbing")),
                belief.target().rateM(),
                switches(fitted.boom()),
                world.number("air_C", 15),
                flow.number("jitter_pct", 1) / 100,
                flow.has("start_count") ? flow.wide("start_count") : 0,
                echo(group(sensors, "heights")),
                new AirThermometer.Spec(air.number("offset_C", 0), air.number("noise_C", 0.05)),
                hub(world.at("hub")),
                hubPort.name(),
                hubPort.baud(),
                gnss(world.at("gnss")),
                gnssPort.name(),
                gnssPort.baud());
    }

    /** A group that may be absent: then the place around it, in which none of its keys is found. */
    private static ConfigNode group(ConfigNode node, String key) {
        return node.has(key) ? node.at(key) : node;
    }

    private Rig.Port port(ConfigNode box) throws ConfigException {
        String name = box.text("port");
        for (Rig.Port port : belief.ports()) {
            if (port.name().equals(name)) {
                return port;
            }
        }
        throw box.wrong(
                "port",
                "the rig has no port called " + name,
                belief.ports().stream().map(Rig.Port::name).collect(Collectors.joining(", ")));
    }

    private static DriveSpec drive(ConfigNode node) throws ConfigException {
        List<DriveSpec.Change> changes = new ArrayList<>();
        for (ConfigNode at : node.list("speeds")) {
            if (at.has("at_s") == at.has("at_m")) {
                throw at.wrong(
                        "speed_mps", at.has("at_s") ? "has two conditions" : "has no condition", "either at_s or at_m");
            }
            changes.add(new DriveSpec.Change(optional(at, "at_s"), optional(at, "at_m"), at.number("speed_mps")));
        }
        return new DriveSpec(node.number("start_mps"), node.number("acceleration_mps2", 0.5), changes);
    }

    private static OptionalDouble optional(ConfigNode node, String key) {
        return node.has(key) ? OptionalDouble.of(node.number(key)) : OptionalDouble.empty();
    }

    private BoomSpec boom(ConfigNode machine, BoomLayout layout) throws ConfigException {
        double heightM = machine.number("boom_height_m", belief.target().heightM());
        BoomSpec spec = switch (machine.text("boom")) {
            case "wide-36" -> BoomSpec.wide36().withSetHeightM(heightM);
            case "wide-24" -> BoomSpec.wide24().withSetHeightM(heightM);
            default -> BoomSpec.rigid(0.5 * layout.widthM(), heightM);
        };
        double outermostM = Math.abs(layout.outletRightM(0));
        if (outermostM > spec.halfWidthM()) {
            throw machine.wrong(
                    "boom",
                    "is too short: it reaches " + spec.halfWidthM() + " m to each side, the outlets " + outermostM
                            + " m",
                    "a boom as wide as the rig's, or rigid");
        }
        return machine.has("height_control") ? controlled(machine.at("height_control"), spec) : spec;
    }

    private static BoomSpec controlled(ConfigNode node, BoomSpec spec) {
        if (!node.flag("present", true)) {
            return spec.withControl(HeightControlSpec.none());
        }
        HeightControlSpec usual = spec.control();
        return spec.withControl(new HeightControlSpec(
                usual.sensorRightM(),
                node.number("averaging_s", usual.averagingS()),
                node.number("delay_s", usual.delayS()),
                node.number("dead_band_m", usual.deadBandM()),
                node.number("gain_ps", usual.gainPerS()),
                node.number("tip_slew_mps", usual.tipSlewMps()),
                node.number("lift_slew_mps", usual.liftSlewMps()),
                usual.wingTravelMpm(),
                usual.liftTravelM()));
    }

    private static PlumbingSpec plumbing(ConfigNode node) {
        PlumbingSpec usual = PlumbingSpec.ordinary();
        return new PlumbingSpec(
                node.number("pump_kPa", usual.pumpPa() / TradeUnits.KPA_PA) * TradeUnits.KPA_PA,
                node.number("idle_kPa", usual.idlePa() / TradeUnits.KPA_PA) * TradeUnits.KPA_PA,
                node.number("gain_ps", usual.gainPs()),
                node.number("valve_stroke_s", usual.strokeS()),
                node.number("speed_lag_s", usual.speedLagS()),
                node.number("meter_lag_s", usual.meterLagS()),
                node.number("line_lag_s", usual.lineLagS()),
                node.number("outlet_spread_pct", usual.outletSpread() * 100) / 100,
                node.number("line_loss_pct", usual.lineLoss() * 100) / 100);
    }

    private List<SwitchSpec> switches(BoomLayout boom) throws ConfigException {
        List<SwitchSpec> switches = new ArrayList<>();
        double beforeS = 0;
        for (ConfigNode at : world.list("sections")) {
            long mask = 0;
            for (double number : at.numbers("on")) {
                if (number > boom.sections().size()) {
                    throw at.wrong(
                            "on",
                            "there is no section " + (int) number,
                            "1 to " + boom.sections().size());
                }
                mask |= 1L << ((int) number - 1);
            }
            double atS = at.number("at_s");
            if (atS < beforeS) {
                throw at.wrong("at_s", "is before the switching above it", "switchings in order of time");
            }
            beforeS = atS;
            switches.add(new SwitchSpec(atS, mask));
        }
        return switches;
    }

    private static EchoSensor.Spec echo(ConfigNode node) {
        EchoSensor.Spec usual = EchoSensor.Spec.usual();
        return new EchoSensor.Spec(
                node.number("noise_m", usual.noiseM()),
                node.number("nearest_m", usual.nearestM()),
                node.number("farthest_m", usual.farthestM()),
                node.number("averaging", usual.averaging()),
                node.number("spike_pct", usual.spikeChance() * 100) / 100);
    }

    private static SensorHub.Spec hub(ConfigNode node) {
        return new SensorHub.Spec(
                new HubClock(
                        node.has("start_tick") ? node.wide("start_tick") : 2_000_000, node.number("drift_ppm", 20)),
                node.has("boots") ? node.wide("boots") : 1,
                node.has("firmware") ? node.wide("firmware") : 1,
                node.integer("loop_jitter_us", 300));
    }

    private static GnssReceiver.Spec gnss(ConfigNode node) {
        GnssReceiver.Spec usual = GnssReceiver.Spec.usual();
        return new GnssReceiver.Spec(
                node.has("rate_hz") ? 1_000_000 / node.integer("rate_hz") : usual.everyUs(),
                Math.round(node.number("latency_s", usual.latencyUs() * 1e-6) * 1e6),
                node.number("speed_noise_mps", usual.speedNoiseMps()),
                node.number("course_noise_deg", usual.courseNoiseDeg()),
                node.number("drift_m", usual.driftM()),
                node.number("position_noise_m", usual.positionNoiseM()),
                node.number("antenna_ahead_m", usual.antennaAheadM()),
                node.number("latitude_deg", usual.latitudeDeg()),
                node.number("longitude_deg", usual.longitudeDeg()),
                node.number("heading_deg", usual.headingDeg()),
                usual.startUtcMs());
    }
}
