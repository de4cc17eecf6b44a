package evenfall.sim.fault;

import java.util.List;

/** Faults of the hub, the cables and the receiver. */
final class WireFaults {
    private WireFaults() {}

    static List<Fault> all() {
        return List.of(
                new Fault(
                        "hub-brown-out",
                        Part.HUB,
                        PlaceKind.NOWHERE,
                        Amount.NONE,
                        "All sensors go dark for a moment, as when the starter turns, and come back with counters at zero.",
                        "the hub's boot count",
                        (p, at, much, luck) -> p.hub().darken(much > 0),
                        "hub-restarted",
                        "sensor-silent"),
                new Fault(
                        "hub-hung",
                        Part.HUB,
                        PlaceKind.NOWHERE,
                        Amount.NONE,
                        "All sensors of the hub go dark although it has power.",
                        "its silence",
                        (p, at, much, luck) -> p.hub().hang(much > 0),
                        "sensor-silent"),
                new Fault(
                        "port-unplugged",
                        Part.CABLES,
                        PlaceKind.PORT,
                        Amount.NONE,
                        "Everything that comes by one cable goes dark.",
                        "its silence",
                        (p, at, much, luck) -> p.lines().get(at).unplug(much > 0),
                        "sensor-silent",
                        "speed-lost"),
                new Fault(
                        "cable-noise",
                        Part.CABLES,
                        PlaceKind.PORT,
                        new Amount("of the bytes", 0.0001, 0.2, 0.002),
                        "Values miss a beat now and then; a plug is wet or a cable lies beside the alternator's.",
                        "the counters of rejected sentences",
                        (p, at, much, luck) -> p.lines().get(at).noise(much, luck)),
                new Fault(
                        "sentences-dropped",
                        Part.CABLES,
                        PlaceKind.PORT,
                        new Amount("of the sentences", 0.001, 0.99, 0.3),
                        "Values come less often than they should.",
                        "their rate",
                        (p, at, much, luck) -> p.lines().get(at).drop(much, luck)),
                new Fault(
                        "gnss-trees",
                        Part.GNSS,
                        PlaceKind.NOWHERE,
                        new Amount("of the epochs", 0.05, 1, 0.85),
                        "Beside a wood the speed comes and goes.",
                        "its silence",
                        (p, at, much, luck) -> p.gnss().ifPresent(receiver -> receiver.miss(much, luck)),
                        "speed-lost",
                        "sensor-silent"),
                new Fault(
                        "gnss-fix-lost",
                        Part.GNSS,
                        PlaceKind.NOWHERE,
                        Amount.NONE,
                        "The receiver talks but says that it does not know where it is; the speed is gone.",
                        "its own status",
                        (p, at, much, luck) -> p.gnss().ifPresent(receiver -> receiver.loseFix(much > 0)),
                        "speed-lost"),
                new Fault(
                        "gnss-jumpy",
                        Part.GNSS,
                        PlaceKind.NOWHERE,
                        new Amount("m/s, standard deviation", 0.05, 5, 0.6),
                        "The speed jumps about at a steady pace, and so does the rate.",
                        "the speed itself, as scatter",
                        (p, at, much, luck) -> p.gnss().ifPresent(receiver -> receiver.shakeSpeed(much, luck))),
                new Fault(
                        "gnss-late",
                        Part.GNSS,
                        PlaceKind.NOWHERE,
                        new Amount("s more", 0.05, 5, 0.8),
                        "Speed and rate lag behind when the machine slows down or pulls away.",
                        "none fitted",
                        (p, at, much, luck) -> p.gnss().ifPresent(receiver -> receiver.delay(Math.round(much * 1e6)))));
    }
}
