package evenfall.sim.scenario;

import evenfall.config.ConfigException;
import evenfall.config.ConfigNode;
import evenfall.rig.BoomLayout;
import evenfall.sim.boom.BoomSpec;
import evenfall.sim.boom.HeightControlSpec;
import evenfall.sim.boom.SoilContactSpec;
import evenfall.sim.boom.SwaySpec;
import evenfall.sim.vehicle.ChassisSpec;
import java.util.ArrayList;
import java.util.List;

/** Reads the chassis and the boom: a preset, and what is otherwise about this one. */
final class MachineReader {
    private final ConfigNode machine;
    private final BoomLayout layout;
    private final double targetHeightM;

    MachineReader(ConfigNode machine, BoomLayout layout, double targetHeightM) {
        this.machine = machine;
        this.layout = layout;
        this.targetHeightM = targetHeightM;
    }

    ChassisSpec chassis() {
        ChassisSpec usual = ChassisSpec.selfPropelled();
        if (!machine.has("chassis_but")) {
            return usual;
        }
        ConfigNode but = machine.at("chassis_but");
        return new ChassisSpec(
                but.number("mass_kg", usual.massKg()),
                but.number("roll_inertia_kgm2", usual.rollInertiaKgm2()),
                but.number("pitch_inertia_kgm2", usual.pitchInertiaKgm2()),
                but.number("track_m", usual.trackM()),
                but.number("wheelbase_m", usual.wheelbaseM()),
                but.number("wheel_stiffness_Npm", usual.wheelStiffnessNpm()),
                but.number("wheel_damping_Nspm", usual.wheelDampingNspm()),
                but.number("contact_m", usual.contactLengthM()),
                but.number("hang_behind_axle_m", usual.hangBehindRearAxleM()),
                but.number("hang_height_m", usual.hangHeightM()));
    }

    BoomSpec boom() throws ConfigException {
        BoomSpec preset = preset(machine.number("boom_height_m", targetHeightM));
        BoomSpec spec;
        try {
            spec = machine.has("boom_but") ? changed(machine.at("boom_but"), preset) : preset;
            spec = controlled(spec);
        } catch (IllegalArgumentException e) {
            throw machine.wrong(
                    machine.has("boom_but") ? "boom_but" : "boom",
                    String.valueOf(e.getMessage()),
                    "a boom that can exist");
        }
        double outermostM = Math.abs(layout.outletRightM(0));
        if (outermostM > spec.halfWidthM()) {
            throw machine.wrong(
                    "boom",
                    "is too short: it reaches " + spec.halfWidthM() + " m to each side, the outlets " + outermostM
                            + " m",
                    "a boom as wide as the rig's, or rigid");
        }
        return spec;
    }

    private BoomSpec preset(double heightM) {
        return switch (machine.text("boom")) {
            case "wide-36" -> BoomSpec.wide36().withSetHeightM(heightM);
            case "wide-24" -> BoomSpec.wide24().withSetHeightM(heightM);
            default -> BoomSpec.rigid(0.5 * layout.widthM(), heightM);
        };
    }

    private static BoomSpec changed(ConfigNode but, BoomSpec usual) {
        return new BoomSpec(
                        but.number("half_width_m", usual.halfWidthM()),
                        but.number("hinge_m", usual.hingeM()),
                        usual.setHeightM(),
                        but.number("roll_hz", usual.rollModeHz()),
                        but.number("roll_damping", usual.rollDampingRatio()),
                        but.number("roll_coupling", usual.rollCoupling()),
                        but.number("levelling_s", usual.levellingS()),
                        but.number("bending_hz", usual.bendingHz()),
                        but.number("bending_damping", usual.bendingDampingRatio()),
                        but.number("wing_taper", usual.wingTaper()),
                        HeightControlSpec.none(),
                        but.has("sway") ? sway(but.at("sway"), usual.sway()) : usual.sway(),
                        but.has("soil") ? soil(but.at("soil"), usual.soil()) : usual.soil())
                .withControl(within(but.number("half_width_m", usual.halfWidthM()), usual));
    }

    /** The preset's control; its sensors move in with the tips of a boom that is shorter, and out with those of a longer one. */
    private static HeightControlSpec within(double halfWidthM, BoomSpec usual) {
        List<Double> sensors = new ArrayList<>();
        for (double at : usual.control().sensorRightM()) {
            sensors.add(at * halfWidthM / usual.halfWidthM());
        }
        return withSensors(usual.control(), sensors);
    }

    private static HeightControlSpec withSensors(HeightControlSpec usual, List<Double> sensors) {
        return new HeightControlSpec(
                sensors,
                usual.averagingS(),
                usual.delayS(),
                usual.deadBandM(),
                usual.gainPerS(),
                usual.tipSlewMps(),
                usual.liftSlewMps(),
                usual.wingTravelMpm(),
                usual.liftTravelM());
    }

    private static SwaySpec sway(ConfigNode node, SwaySpec usual) {
        if (!node.flag("present", true)) {
            return SwaySpec.none();
        }
        return new SwaySpec(
                node.number("yaw_hz", usual.yawHz()),
                node.number("yaw_damping", usual.yawDampingRatio()),
                node.number("bending_hz", usual.bendingHz()),
                node.number("bending_damping", usual.bendingDampingRatio()),
                node.number("yaw_per_cross_slope", usual.yawPerCrossSlope()),
                node.number("steering_s", usual.steeringS()),
                node.number("pitch_arm_m", usual.pitchArmM()));
    }

    private static SoilContactSpec soil(ConfigNode node, SoilContactSpec usual) {
        return new SoilContactSpec(
                node.number("contact_hz", usual.contactHz()), node.number("damping", usual.dampingRatio()));
    }

    private BoomSpec controlled(BoomSpec spec) {
        if (!machine.has("height_control")) {
            return spec;
        }
        ConfigNode node = machine.at("height_control");
        if (!node.flag("present", true)) {
            return spec.withControl(HeightControlSpec.none());
        }
        HeightControlSpec usual = spec.control();
        return spec.withControl(new HeightControlSpec(
                node.has("sensors_m") ? list(node.numbers("sensors_m")) : usual.sensorRightM(),
                node.number("averaging_s", usual.averagingS()),
                node.number("delay_s", usual.delayS()),
                node.number("dead_band_m", usual.deadBandM()),
                node.number("gain_ps", usual.gainPerS()),
                node.number("tip_slew_mps", usual.tipSlewMps()),
                node.number("lift_slew_mps", usual.liftSlewMps()),
                usual.wingTravelMpm(),
                usual.liftTravelM()));
    }

    private static List<Double> list(double[] values) {
        List<Double> list = new ArrayList<>();
        for (double value : values) {
            list.add(value);
        }
        return list;
    }
}
