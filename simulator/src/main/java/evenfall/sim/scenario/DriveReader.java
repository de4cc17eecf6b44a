package evenfall.sim.scenario;

import evenfall.config.ConfigException;
import evenfall.config.ConfigNode;
import evenfall.rig.BoomLayout;
import evenfall.sim.drive.DrivePlan;
import evenfall.sim.drive.Headland;
import evenfall.sim.drive.Path;
import evenfall.sim.drive.SectionPlan;
import evenfall.sim.drive.SpeedChange;
import java.util.ArrayList;
import java.util.List;

/** Reads where and how fast the machine is driven, and when its sections are switched. */
final class DriveReader {
    /** Where the file does not say how a turn is driven: our choice for a self-propelled machine with a wide boom. */
    private static final double USUAL_RADIUS_M = 10;

    private static final double USUAL_RUN_IN_M = 8;

    private final ConfigNode world;
    private final BoomLayout boom;

    DriveReader(ConfigNode world, BoomLayout boom) {
        this.world = world;
        this.boom = boom;
    }

    DrivePlan drive() throws ConfigException {
        ConfigNode node = world.at("drive");
        double startMps = node.number("start_mps");
        double accelerationMps2 = node.number("acceleration_mps2", 0.5);
        Path path = path(node);
        if (node.has("passes") && node.at("passes").has("turn_mps")) {
            ConfigNode passes = node.at("passes");
            if (node.has("speeds")) {
                throw passes.wrong("turn_mps", "stands beside speeds", "one of the two");
            }
            double turnMps = passes.number("turn_mps");
            if (!(turnMps > 0 && turnMps <= startMps)) {
                throw passes.wrong(
                        "turn_mps", turnMps + " cannot be used", "above 0 and not above start_mps, " + startMps);
            }
            return DrivePlan.slowInTurns(path, startMps, turnMps, accelerationMps2);
        }
        List<SpeedChange> changes = new ArrayList<>();
        for (ConfigNode at : node.list("speeds")) {
            requireOneCondition(at, "speed_mps");
            double speedMps = at.number("speed_mps");
            changes.add(
                    at.has("at_s")
                            ? SpeedChange.atS(at.number("at_s"), speedMps)
                            : SpeedChange.atM(at.number("at_m"), speedMps));
        }
        return new DrivePlan(path, startMps, accelerationMps2, changes);
    }

    private static void requireOneCondition(ConfigNode at, String what) throws ConfigException {
        if (at.has("at_s") == at.has("at_m")) {
            throw at.wrong(what, at.has("at_s") ? "has two conditions" : "has no condition", "either at_s or at_m");
        }
    }

    private Path path(ConfigNode drive) throws ConfigException {
        if (drive.has("passes") && drive.has("way")) {
            throw drive.wrong("way", "stands beside passes", "one of the two");
        }
        if (drive.has("passes")) {
            ConfigNode at = drive.at("passes");
            return Path.backAndForth(
                    at.integer("count"),
                    at.number("length_m"),
                    at.number("apart_m", boom.widthM()),
                    at.text("first_turn", "right").equals("right"),
                    new Headland(at.number("radius_m", USUAL_RADIUS_M), at.number("run_in_m", USUAL_RUN_IN_M)));
        }
        if (drive.has("way")) {
            return way(drive.list("way"));
        }
        return Path.straight();
    }

    private static Path way(List<ConfigNode> stretches) throws ConfigException {
        Path.Builder path = new Path.Builder();
        for (ConfigNode at : stretches) {
            if (at.has("straight_m") == at.has("turn_deg")) {
                throw at.wrong("straight_m", "is neither a straight nor a bend", "either straight_m or turn_deg");
            }
            if (at.has("straight_m")) {
                path.straight(at.number("straight_m"));
            } else {
                path.bend(
                        StrictMath.toRadians(at.number("turn_deg")),
                        at.number("radius_m", USUAL_RADIUS_M),
                        at.number("run_in_m", USUAL_RUN_IN_M),
                        at.flag("worked", true));
            }
        }
        return path.build();
    }

    SectionPlan sections(Path path) throws ConfigException {
        int sections = boom.sections().size();
        if (world.has("headland_off")) {
            ConfigNode node = world.at("headland_off");
            if (world.has("sections")) {
                throw world.wrong("headland_off", "stands beside sections", "one of the two");
            }
            if (path.passEdgesM().isEmpty()) {
                throw world.wrong(
                        "headland_off", "has no headland to go off in", "a drive with passes, or a way with an end");
            }
            return SectionPlan.offInHeadland(path, sections, node.number("late_off_m", 0), node.number("late_on_m", 0));
        }
        List<SectionPlan.Switch> switches = new ArrayList<>();
        double beforeS = 0;
        double beforeM = 0;
        for (ConfigNode at : world.list("sections")) {
            requireOneCondition(at, "on");
            long mask = mask(at, sections);
            if (at.has("at_s")) {
                beforeS = later(at, "at_s", beforeS);
                switches.add(SectionPlan.Switch.atS(beforeS, mask));
            } else {
                beforeM = later(at, "at_m", beforeM);
                switches.add(SectionPlan.Switch.atM(beforeM, mask));
            }
        }
        return SectionPlan.of(sections, switches);
    }

    private static double later(ConfigNode at, String key, double before) throws ConfigException {
        double value = at.number(key);
        if (value < before) {
            throw at.wrong(key, "is before the switching above it", "switchings in order");
        }
        return value;
    }

    private static long mask(ConfigNode at, int sections) throws ConfigException {
        long mask = 0;
        for (double number : at.numbers("on")) {
            if (number > sections) {
                throw at.wrong("on", "there is no section " + (int) number, "1 to " + sections);
            }
            mask |= 1L << ((int) number - 1);
        }
        return mask;
    }
}
