package evenfall.sim.fault;

import java.util.List;

/** Faults of boom and chassis. */
final class MachineFaults {
    private static final String HEIGHTS = "height sensors";

    private MachineFaults() {}

    static List<Fault> all() {
        return List.of(
                new Fault(
                        "wing-stuck",
                        Part.BOOM,
                        PlaceKind.WING,
                        Amount.NONE,
                        "One wing no longer follows the ground.",
                        HEIGHTS,
                        (p, at, much, luck) -> p.machine().slowWing(at == 0, much),
                        "wing-low",
                        "wing-high",
                        "bands-gapped",
                        "bands-doubled"),
                new Fault(
                        "height-control-dead",
                        Part.BOOM,
                        PlaceKind.NOWHERE,
                        Amount.NONE,
                        "The boom stays where it is, whatever the ground does.",
                        HEIGHTS,
                        (p, at, much, luck) -> p.machine().stopControl(much > 0),
                        "wing-low",
                        "wing-high",
                        "bands-gapped",
                        "bands-doubled"),
                new Fault(
                        "height-control-slow",
                        Part.BOOM,
                        PlaceKind.NOWHERE,
                        new Amount("of its speed", 0.05, 0.99, 0.7),
                        "The wings come after the ground, later than they used to; the oil is cold or low.",
                        HEIGHTS,
                        (p, at, much, luck) -> p.machine().slowControl(much),
                        "wing-low",
                        "wing-high",
                        "bands-gapped",
                        "bands-doubled"),
                new Fault(
                        "boom-set-wrong",
                        Part.BOOM,
                        PlaceKind.NOWHERE,
                        new Amount("m too high", -0.4, 1, 0.25),
                        "The whole boom runs at a height that the outlets are not made for.",
                        HEIGHTS,
                        (p, at, much, luck) -> p.machine().setWrong(much),
                        "wing-low",
                        "wing-high",
                        "bands-gapped",
                        "bands-doubled"),
                new Fault(
                        "tyre-soft",
                        Part.CHASSIS,
                        PlaceKind.WHEEL,
                        new Amount("m lower", 0.01, 0.4, 0.08),
                        "The machine leans, and one tip hangs lower than the other.",
                        HEIGHTS,
                        (p, at, much, luck) -> p.machine().softenTyre(at, much)));
    }
}
