package evenfall.sim.scenario;

import evenfall.config.ConfigException;
import evenfall.config.ConfigNode;
import evenfall.outlet.OutletDesign;
import evenfall.quantity.TradeUnits;
import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import evenfall.sim.drive.DrivePlan;
import evenfall.sim.elevation.ElevationFile;
import evenfall.sim.fault.FaultPlaces;
import evenfall.sim.fault.FaultReader;
import evenfall.sim.fault.Part;
import evenfall.sim.ground.ElevationGrid;
import evenfall.sim.ground.Ground;
import evenfall.sim.ground.RoughnessClass;
import evenfall.sim.plumbing.PlumbingSpec;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
        SensorReader boxes = new SensorReader(world, belief);
        Rig.Port hubPort = port(world.at("hub"));
        Rig.Port gnssPort = port(world.at("gnss"));
        if (hubPort.name().equals(gnssPort.name())) {
            throw world.at("gnss").wrong("port", "is the hub's port too", "a port of its own");
        }
        SensorsSpec sensors = boxes.sensors();
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
                FaultReader.read(world, places(fitted, sensors, List.of(hubPort.name(), gnssPort.name()))),
                sensors,
                boxes.hub(),
                hubPort.name(),
                hubPort.baud(),
                boxes.gnss(),
                gnssPort.name(),
                gnssPort.baud());
    }

    /** A group that may be absent: then the place around it, in which none of its keys is found. */
    private static ConfigNode group(ConfigNode node, String key) {
        return node.has(key) ? node.at(key) : node;
    }

    /** Where faults can be. */
    private static FaultPlaces places(FittedSpec fitted, SensorsSpec sensors, List<String> ports) {
        List<Part> parts = new ArrayList<>();
        fit(parts, Part.FLOW_METER, fitted.pulsesPerM3().isPresent());
        fit(parts, Part.WHEEL, sensors.wheelPulsesPerM().isPresent());
        fit(parts, Part.PRESSURE, fitted.pressure().isPresent());
        fit(parts, Part.AIR, fitted.air());
        fit(parts, Part.SWITCHES, fitted.switches());
        fit(parts, Part.GNSS, fitted.gnss());
        return new FaultPlaces(
                fitted.boom().outlets(),
                fitted.boom().sections().stream().map(BoomLayout.Section::name).toList(),
                fitted.heights().stream().map(FittedSpec.Height::name).toList(),
                ports,
                parts);
    }

    private static void fit(List<Part> parts, Part part, boolean isFitted) {
        if (isFitted) {
            parts.add(part);
        }
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
                node.number("line_loss_pct", usual.lineLoss() * 100) / 100,
                lines(node, usual.lines()));
    }

    private static PlumbingSpec.Lines lines(ConfigNode node, PlumbingSpec.Lines usual) {
        return new PlumbingSpec.Lines(
                node.number("pump_Lpm", usual.pumpM3ps() / TradeUnits.LPM_M3PS) * TradeUnits.LPM_M3PS,
                node.number("section_open_s", usual.openS()),
                node.number("section_shut_s", usual.closeS()),
                node.number("dribble_mL", usual.dribbleM3() * 1e6) * 1e-6,
                node.number("wear_pct", usual.wear() * 100) / 100,
                1 + node.number("controller_meter_pct", (usual.controllerMeterFactor() - 1) * 100) / 100,
                1 + node.number("controller_speed_pct", (usual.controllerSpeedFactor() - 1) * 100) / 100);
    }
}
