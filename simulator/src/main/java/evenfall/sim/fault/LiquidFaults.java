package evenfall.sim.fault;

import evenfall.quantity.TradeUnits;
import java.util.List;

/** Faults of outlets, plumbing and rate control. */
final class LiquidFaults {
    private static final String FLOW_AND_PRESSURE = "flow meter and pressure together";
    private static final String FLOW_AND_SPEED = "flow meter and speed together";

    /** Pressure for which the size of a leak is given, Pa. */
    private static final double LEAK_PA = 200_000;

    private LiquidFaults() {}

    static List<Fault> all() {
        return List.of(
                new Fault(
                        "outlet-blocked",
                        Part.OUTLETS,
                        PlaceKind.OUTLET,
                        new Amount("of its hole", 0.05, 1, 1),
                        "A strip without liquid runs through the field behind one outlet.",
                        FLOW_AND_PRESSURE,
                        (p, at, much, luck) -> p.plumbing().blockOutlet(at, much),
                        "outlet-blocked"),
                new Fault(
                        "outlet-worn",
                        Part.OUTLETS,
                        PlaceKind.OUTLET,
                        new Amount("more flow, as a share", 0.01, 1, 0.15),
                        "The pressure for the usual rate is lower than it was when the outlets were new.",
                        FLOW_AND_PRESSURE,
                        (p, at, much, luck) -> p.plumbing().wearOutlet(at, much),
                        "outlet-open"),
                new Fault(
                        "outlet-leaking",
                        Part.OUTLETS,
                        PlaceKind.OUTLET,
                        new Amount("of its flow, beside its streams", 0.05, 3, 0.5),
                        "Liquid runs down beside an outlet and burns a line into the crop.",
                        FLOW_AND_PRESSURE,
                        (p, at, much, luck) -> p.plumbing().leakOutlet(at, much),
                        "outlet-open"),
                new Fault(
                        "outlet-lost",
                        Part.OUTLETS,
                        PlaceKind.OUTLET,
                        new Amount("times its flow", 2, 15, 6),
                        "A thick jet runs straight down where an outlet was, and the rate everywhere else drops.",
                        FLOW_AND_PRESSURE,
                        (p, at, much, luck) -> {
                            p.plumbing().loseOutlet(at, much);
                            p.mounts().lose(at, much > 0);
                        },
                        "outlet-open"),
                new Fault(
                        "outlet-twisted",
                        Part.OUTLETS,
                        PlaceKind.OUTLET,
                        new Amount("degrees", -90, 90, 45),
                        "Behind one outlet the bands lie closer together, with gaps to its neighbours.",
                        "none fitted",
                        (p, at, much, luck) -> p.mounts().turn(at, StrictMath.toRadians(much))),
                new Fault(
                        "strainer-plugged",
                        Part.PLUMBING,
                        PlaceKind.NOWHERE,
                        new Amount("of its mesh", 0.1, 0.99, 0.85),
                        "The rate no longer comes up to the target although the valve is fully open.",
                        FLOW_AND_SPEED,
                        (p, at, much, luck) -> p.plumbing().plugStrainer(much),
                        "rate-low"),
                new Fault(
                        "section-strainer-plugged",
                        Part.PLUMBING,
                        PlaceKind.SECTION,
                        new Amount("of its mesh", 0.1, 0.99, 0.8),
                        "The streams of one section are short and weak.",
                        FLOW_AND_PRESSURE,
                        (p, at, much, luck) -> p.plumbing().plugSectionStrainer(at, much),
                        "outlet-blocked"),
                new Fault(
                        "section-stays-shut",
                        Part.PLUMBING,
                        PlaceKind.SECTION,
                        Amount.NONE,
                        "One section stays dry although its switch is on, and the others get its share.",
                        FLOW_AND_PRESSURE,
                        (p, at, much, luck) -> p.plumbing().holdShut(at, much > 0),
                        "outlet-blocked"),
                new Fault(
                        "section-stays-open",
                        Part.PLUMBING,
                        PlaceKind.SECTION,
                        Amount.NONE,
                        "One section goes on running although its switch is off.",
                        FLOW_AND_PRESSURE,
                        (p, at, much, luck) -> p.plumbing().holdOpen(at, much > 0),
                        "outlet-open",
                        "flow-without-travel"),
                new Fault(
                        "line-leaking",
                        Part.PLUMBING,
                        PlaceKind.NOWHERE,
                        new Amount("L/min at 200 kPa", 0.1, 100, 10),
                        "Liquid runs from a hose of the boom, and the tank is empty before its time.",
                        FLOW_AND_PRESSURE,
                        (p, at, much, luck) -> p.plumbing().leakLine(much * TradeUnits.LPM_M3PS, LEAK_PA),
                        "outlet-open"),
                new Fault(
                        "air-in-line",
                        Part.PLUMBING,
                        PlaceKind.NOWHERE,
                        new Amount("of a slug's volume", 0.05, 0.6, 0.3),
                        "The streams spit, and the flow reading jumps up and down.",
                        "flow meter and pressure together, as scatter",
                        (p, at, much, luck) -> p.plumbing().drawAir(much, luck)),
                new Fault(
                        "pump-weak",
                        Part.PLUMBING,
                        PlaceKind.NOWHERE,
                        new Amount("of its speed", 0.05, 0.9, 0.5),
                        "Above a certain speed the rate falls below the target.",
                        FLOW_AND_SPEED,
                        (p, at, much, luck) -> p.plumbing().weakenPump(much),
                        "rate-low"),
                new Fault(
                        "valve-hunting",
                        Part.RATE_CONTROL,
                        PlaceKind.NOWHERE,
                        new Amount("of its opening", 0.02, 0.6, 0.25),
                        "Rate and pressure swing up and down every few seconds at a steady speed.",
                        FLOW_AND_SPEED,
                        (p, at, much, luck) -> p.plumbing().swingValve(much),
                        "rate-high",
                        "rate-low"),
                new Fault(
                        "valve-stuck",
                        Part.RATE_CONTROL,
                        PlaceKind.NOWHERE,
                        Amount.NONE,
                        "The flow stays what it was, however fast the machine goes.",
                        FLOW_AND_SPEED,
                        (p, at, much, luck) -> p.plumbing().holdValve(much > 0),
                        "rate-high",
                        "rate-low"),
                new Fault(
                        "controller-meter-wrong",
                        Part.RATE_CONTROL,
                        PlaceKind.NOWHERE,
                        new Amount("too much on the rate controller's own meter, as a share", -0.5, 0.5, 0.15),
                        "The cab shows the target rate, but the tank does not empty as it should.",
                        FLOW_AND_SPEED,
                        (p, at, much, luck) -> p.plumbing().controllerMeter(1 + much),
                        "rate-high",
                        "rate-low"),
                new Fault(
                        "controller-speed-wrong",
                        Part.RATE_CONTROL,
                        PlaceKind.NOWHERE,
                        new Amount("too much on the rate controller's own speed, as a share", -0.5, 0.5, 0.15),
                        "The cab shows the target rate, but the hectares on its counter are not the field's.",
                        FLOW_AND_SPEED,
                        (p, at, much, luck) -> p.plumbing().controllerSpeed(1 + much),
                        "rate-high",
                        "rate-low"));
    }
}
