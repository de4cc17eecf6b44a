package evenfall.sim.scenario;

import evenfall.config.ConfigException;
import evenfall.config.ConfigNode;
import evenfall.quantity.TradeUnits;
import evenfall.rig.Rig;
import evenfall.sim.sensor.AirThermometer;
import evenfall.sim.sensor.EchoSensor;
import evenfall.sim.sensor.GnssReceiver;
import evenfall.sim.sensor.HubClock;
import evenfall.sim.sensor.RadarSensor;
import evenfall.sim.sensor.SensorHub;
import evenfall.sim.sensor.TankGauge;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads what sensors get wrong, and the two boxes that speak for them. */
final class SensorReader {
    private final ConfigNode world;
    private final Rig belief;

    SensorReader(ConfigNode world, Rig belief) {
        this.world = world;
        this.belief = belief;
    }

    SensorsSpec sensors() throws ConfigException {
        ConfigNode sensors = group(world, "sensors");
        ConfigNode flow = group(sensors, "flow");
        ConfigNode air = group(sensors, "air");
        ConfigNode heights = group(sensors, "heights");
        boolean radar = heights.text("kind", "ultrasonic").equals("radar");
        return new SensorsSpec(
                flow.number("jitter_pct", 1) / 100,
                flow.has("start_count") ? flow.wide("start_count") : 0,
                flow.number("least_Lpm", 0) * TradeUnits.LPM_M3PS,
                wheel(sensors),
                echo(heights, radar),
                radar ? Optional.of(radar(heights)) : Optional.empty(),
                new AirThermometer.Spec(air.number("offset_C", 0), air.number("noise_C", 0.05)),
                tank(sensors));
    }

    /** What the world gives; else what the rig believes to be there. */
    private OptionalDouble wheel(ConfigNode sensors) {
        if (sensors.has("wheel")) {
            return OptionalDouble.of(sensors.at("wheel").number("pulses_per_m"));
        }
        return belief.sensors()
                .wheel()
                .map(w -> OptionalDouble.of(w.pulsesPerM()))
                .orElse(OptionalDouble.empty());
    }

    /** The gauge that the rig believes in, and what is the matter with it; three quarters full where nothing is said. */
    private Optional<TankGauge.Spec> tank(ConfigNode sensors) throws ConfigException {
        Optional<Rig.Tank> believed = belief.sensors().tank();
        if (believed.isEmpty()) {
            if (sensors.has("tank")) {
                throw sensors.wrong(
                        "tank", "is fitted, and the rig does not know of it", "a tank among the rig's sensors too");
            }
            return Optional.empty();
        }
        List<Rig.Tank.Mark> table = believed.get().table();
        double fullM3 =
                Math.max(table.get(0).volumeM3(), table.get(table.size() - 1).volumeM3());
        ConfigNode node = group(sensors, "tank");
        return Optional.of(new TankGauge.Spec(
                table.stream()
                        .map(mark -> new TankGauge.Mark(mark.counts(), mark.volumeM3()))
                        .toList(),
                node.number("start_L", 0.75 * fullM3 / TradeUnits.LITRE_M3) * TradeUnits.LITRE_M3,
                1 + node.number("reads_more_pct", 0) / 100,
                node.number("slosh_L", 30) * TradeUnits.LITRE_M3,
                node.number("slosh_hz", 0.5),
                0.05));
    }

    /** A group that may be absent: then the place around it, in which none of its keys is found. */
    private static ConfigNode group(ConfigNode node, String key) {
        return node.has(key) ? node.at(key) : node;
    }

    private static EchoSensor.Spec echo(ConfigNode node, boolean radar) throws ConfigException {
        if (!radar && node.has("offset_m")) {
            throw node.wrong("offset_m", "belongs to radars", "kind: radar, or no offset_m");
        }
        EchoSensor.Spec usual = EchoSensor.Spec.usual();
        return new EchoSensor.Spec(
                node.number("noise_m", usual.noiseM()),
                node.number("nearest_m", usual.nearestM()),
                node.number("farthest_m", usual.farthestM()),
                node.number("averaging", usual.averaging()),
                node.number("spike_pct", usual.spikeChance() * 100) / 100,
                node.number("double_pct", usual.doubleChance() * 100) / 100,
                node.number("warmer_C", usual.warmerC()));
    }

    private static RadarSensor.Spec radar(ConfigNode node) throws ConfigException {
        for (String key : new String[] {"spike_pct", "double_pct", "warmer_C"}) {
            if (node.has(key)) {
                throw node.wrong(key, "belongs to ultrasonic sensors", "kind: ultrasonic, or no " + key);
            }
        }
        RadarSensor.Spec usual = RadarSensor.Spec.usual();
        return new RadarSensor.Spec(
                node.number("noise_m", usual.noiseM()),
                node.number("offset_m", usual.offsetM()),
                node.number("nearest_m", usual.nearestM()),
                node.number("farthest_m", usual.farthestM()),
                node.number("averaging", usual.averaging()));
    }

    SensorHub.Spec hub() {
        ConfigNode node = world.at("hub");
        return new SensorHub.Spec(
                new HubClock(
                        node.has("start_tick") ? node.wide("start_tick") : 2_000_000, node.number("drift_ppm", 20)),
                node.has("boots") ? node.wide("boots") : 1,
                node.has("firmware") ? node.wide("firmware") : 1,
                node.integer("loop_jitter_us", 300));
    }

    GnssReceiver.Spec gnss() {
        ConfigNode node = world.at("gnss");
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
