package evenfall.sim.scenario;

import evenfall.config.ConfigException;
import evenfall.config.ConfigNode;
import evenfall.outlet.OutletDesign;
import evenfall.quantity.TradeUnits;
import evenfall.rig.Rig;
import evenfall.sim.drive.DrivePlan;
import evenfall.sim.elevation.ElevationFile;
import evenfall.sim.ground.ElevationGrid;
import evenfall.sim.ground.Ground;
import evenfall.sim.ground.RoughnessClass;
import evenfall.sim.plumbing.PlumbingSpec;
import evenfall.sim.sensor.AirThermometer;
import evenfall.sim.sensor.EchoSensor;
import evenfall.sim.sensor.GnssReceiver;
import evenfall.sim.sensor.HubClock;
import evenfall.sim.sensor.SensorHub;
import java.nio.file.Path;
import java.util.Optional;
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
        DriveReader driven = new DriveReader(world, fitted.boom());
        DrivePlan drive = driven.drive();
        MachineReader machine = new MachineReader(
                world.at("machine"), fitted.boom(), belief.target().heightM());
        return new WorldSpec(
                fitted,
                roughness.equals("level") ? Optional.empty() : Optional.of(RoughnessClass.valueOf(roughness)),
                FeatureReader.read(ground),
                surveyed(ground),
                drive,
                machine.chassis(),
                machine.boom(),
                plumbing(group(world, "plumbing")),
                belief.target().rateM(),
                driven.sections(drive.path()),
                world.text("streams", "real").equals("ideal"),
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

    /** Heights of a survey, when the file names one. */
    private Optional<Ground> surveyed(ConfigNode ground) throws ConfigException {
        if (!ground.has("survey")) {
            return Optional.empty();
        }
        ConfigNode at = ground.at("survey");
        ElevationGrid grid = ElevationFile.read(folder.resolve(at.text("file")));
        double eastM = at.number("east_m");
        double northM = at.number("north_m");
        if (!grid.covers(eastM, northM)) {
            double lastEastM = grid.westM() + (grid.columns() - 1) * grid.cellM();
            double lastNorthM = grid.southM() + (grid.rows() - 1) * grid.cellM();
            throw at.wrong(
                    "east_m",
                    eastM + ", " + northM + " lies outside the survey",
                    "east_m " + grid.westM() + " to " + lastEastM + ", north_m " + grid.southM() + " to " + lastNorthM);
        }
        return Optional.of(grid.from(eastM, northM, StrictMath.toRadians(at.number("bearing_deg", 0))));
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
