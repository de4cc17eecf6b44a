package evenfall.bench.matrix;

import evenfall.config.ConfigException;
import evenfall.sim.fault.Fault;
import evenfall.sim.fault.Faults;
import evenfall.sim.fault.PlaceKind;
import evenfall.sim.scenario.Scenario;
import java.util.ArrayList;
import java.util.List;

/**
 * Every fault of the library on its own: 20 s of clean running, then the fault at its usual size for a minute, then 10 s without it.
 * Meanwhile the driver goes a little faster and slower again, and one section is off for a while, so that faults which show only then
 * can.
 */
final class FaultBench {
    static final double AT_S = 20;
    private static final double FOR_S = 60;
    private static final double AFTER_S = 10;

    /** Level but for class B, at 18 km/h, 21 and 18 again. */
    private static final String EVEN = "{roughness: B}";

    /** Rough enough for a boom that does not follow: class C, a hill to one side, knolls under both wings. */
    private static final String ROUGH = "{roughness: C, features: ["
            + "{side_slope: {right_mpm: -0.03, from_m: 110, run_in_m: 40}}, "
            + "{knoll: {at_m: 190, right_m: -12, radius_m: 40, top_m: 0.7}}, "
            + "{knoll: {at_m: 290, right_m: 12, radius_m: 30, top_m: 0.6}}]}";

    private static final String DRIVE =
            "{start_mps: 5.0, speeds: [{at_s: 40, speed_mps: 5.8}, {at_s: 62, speed_mps: 5.0}]}";

    private static final String SECTION_OFF =
            "sections: [{at_s: 30, on: [1, 2, 4, 5, 6]}, {at_s: 45, on: [1, 2, 3, 4, 5, 6]}]";

    private final String fault;
    private final String where;
    private final String howMuch;
    private final boolean rough;

    private FaultBench(String fault, String where, String howMuch, boolean rough) {
        this.fault = fault;
        this.where = where;
        this.howMuch = howMuch;
        this.rough = rough;
    }

    /** In the order of the library; some at a second place or size, where the usual one is too small to be told. */
    static List<FaultBench> all() {
        List<FaultBench> all = new ArrayList<>();
        for (Fault fault : Faults.all()) {
            all.add(new FaultBench(fault.id(), usualPlace(fault.place()), "", isRough(fault)));
            switch (fault.id()) {
                // One of 72 is 1.4 % of the flow and cannot be told.
                case "outlet-blocked" -> all.add(new FaultBench(fault.id(), "30-35", "", false));
                case "outlet-worn" -> all.add(new FaultBench(fault.id(), "all", "", false));
                case "outlet-leaking" -> all.add(new FaultBench(fault.id(), "30-39", "", false));
                case "line-leaking" -> all.add(new FaultBench(fault.id(), "", "4", false));
                case "wing-stuck" -> all.add(new FaultBench(fault.id(), "right", "", true));
                case "boom-set-wrong" -> all.add(new FaultBench(fault.id(), "", "-0.25", true));
                case "port-unplugged" -> all.add(new FaultBench(fault.id(), "gnss", "", false));
                default -> {
                    // Once is enough.
                }
            }
        }
        return all;
    }

    private static String usualPlace(PlaceKind kind) {
        return switch (kind) {
            case NOWHERE -> "";
            case OUTLET -> "17";
            case SECTION -> "3";
            case HEIGHT_SENSOR -> "left-tip";
            case WING -> "left";
            case WHEEL -> "rear-right";
            case PORT -> "hub";
        };
    }

    private static boolean isRough(Fault fault) {
        return switch (fault.part()) {
            case BOOM, HEIGHT_SENSORS, CHASSIS -> true;
            default -> false;
        };
    }

    String fault() {
        return fault;
    }

    /** For people: the fault, its place and, where it is not the usual one, its size. */
    String name() {
        String text = where.isEmpty() ? fault : fault + " " + where;
        return howMuch.isEmpty() ? text : text + " " + howMuch;
    }

    Scenario scenario(long seed) throws ConfigException {
        String line = "{fault: " + fault + ", at_s: " + MadeField.number(AT_S) + ", for_s: " + MadeField.number(FOR_S)
                + (where.isEmpty() ? "" : ", where: " + where)
                + (howMuch.isEmpty() ? "" : ", how_much: " + howMuch)
                + "}";
        MadeField field = new MadeField(name())
                .lasts(AT_S + FOR_S + AFTER_S)
                .ground(rough ? ROUGH : EVEN)
                // Three streams forgive a wrong height least, so that it matters.
                .outlet(rough ? "three-stream" : "five-stream")
                .drive(DRIVE)
                .world("faults: [" + line + "]");
        return (fault.equals("section-stays-open") ? field.world(SECTION_OFF) : field).scenario(seed);
    }
}
