package evenfall.sim.fault;

import java.util.List;

/** Faults of the height sensors. */
final class HeightFaults {
    private static final String ITSELF = "the sensor itself, and its neighbours";

    private HeightFaults() {}

    private static Fault of(String id, Amount amount, String notice, String seenBy, Effect effect, String... alerts) {
        return new Fault(id, Part.HEIGHT_SENSORS, PlaceKind.HEIGHT_SENSOR, amount, notice, seenBy, effect, alerts);
    }

    static List<Fault> all() {
        return List.of(
                of(
                        "height-foam",
                        Amount.NONE,
                        "One place of the boom is shown close to the ground and does not move; its sensor's face is wet with foam.",
                        ITSELF,
                        (p, at, much, luck) -> p.hub().foam(at, much > 0),
                        "sensor-implausible",
                        "wing-low"),
                of(
                        "height-deaf",
                        Amount.NONE,
                        "One place of the boom shows no height.",
                        ITSELF,
                        (p, at, much, luck) -> p.hub().deafen(at, much > 0),
                        "sensor-silent"),
                of(
                        "height-stuck",
                        Amount.NONE,
                        "One place of the boom shows the same height to the millimetre while the boom moves.",
                        ITSELF,
                        (p, at, much, luck) -> p.hub().stick(at, much > 0),
                        "sensor-implausible"),
                of(
                        "height-loose",
                        new Amount("m, standard deviation", 0.01, 1, 0.15),
                        "The height at one place jumps about; the bracket rattles.",
                        ITSELF,
                        (p, at, much, luck) -> p.hub().shake(at, much, luck),
                        "sensor-implausible"),
                of(
                        "height-double-echo",
                        new Amount("of the echoes", 0.01, 1, 0.5),
                        "The height at one place jumps to twice its value.",
                        ITSELF,
                        (p, at, much, luck) -> p.hub().doubleEcho(at, much, luck),
                        "sensor-implausible"),
                of(
                        "height-canopy",
                        new Amount("m of crop", 0.02, 1.5, 0.2),
                        "The boom is shown lower than the tape measure says; the sensor sees the crop and not the soil.",
                        "none fitted",
                        (p, at, much, luck) -> p.hub().canopy(at, much)),
                of(
                        "height-misplaced",
                        new Amount("m to the right", -10, 10, 2),
                        "Heights come too early or too late across a ridge; the sensor hangs at another place than the rig says.",
                        "none fitted",
                        (p, at, much, luck) -> p.hub().move(at, much)),
                of(
                        "height-mounted-wrong",
                        new Amount("m too high", -0.5, 1, 0.15),
                        "The height at one place is off by the same amount everywhere.",
                        "its neighbours, on level ground",
                        (p, at, much, luck) -> p.hub().raise(at, much)),
                of(
                        "height-pair-swapped",
                        Amount.NONE,
                        "As one wing rises, the other's tip is shown to; the leads of two sensors are changed over, the others are right.",
                        ITSELF,
                        (p, at, much, luck) -> p.hub().swapPair(at, much > 0),
                        "sensor-implausible"),
                new Fault(
                        "heights-swapped",
                        Part.HEIGHT_SENSORS,
                        PlaceKind.NOWHERE,
                        Amount.NONE,
                        "The left wing dives and the right one is shown low; their leads are changed over.",
                        "none fitted",
                        (p, at, much, luck) -> p.hub().swap(much > 0)));
    }
}
