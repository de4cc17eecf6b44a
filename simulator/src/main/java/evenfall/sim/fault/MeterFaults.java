package evenfall.sim.fault;

import evenfall.quantity.TradeUnits;
import java.util.List;

/** Faults of the sensors that are not height sensors. */
final class MeterFaults {
    private static final String FLOW_AND_PRESSURE = "flow meter and pressure together";

    private MeterFaults() {}

    private static Fault of(
            String id, Part part, Amount amount, String notice, String seenBy, Effect effect, String... alerts) {
        return new Fault(id, part, PlaceKind.NOWHERE, amount, notice, seenBy, effect, alerts);
    }

    static List<Fault> all() {
        return List.of(
                of(
                        "meter-factor-wrong",
                        Part.FLOW_METER,
                        new Amount("too many pulses, as a share", -0.5, 1, 0.15),
                        "The litres on the display and the litres from the tank are not the same.",
                        FLOW_AND_PRESSURE,
                        (p, at, much, luck) -> p.flow().ifPresent(meter -> meter.factor(1 + much)),
                        "outlet-open",
                        "outlet-blocked",
                        "rate-high",
                        "rate-low",
                        "sensor-implausible"),
                of(
                        "meter-stuck",
                        Part.FLOW_METER,
                        Amount.NONE,
                        "The display shows no flow while liquid runs.",
                        FLOW_AND_PRESSURE,
                        (p, at, much, luck) -> p.flow().ifPresent(meter -> meter.hold(much > 0)),
                        "travel-without-flow",
                        "sensor-implausible",
                        "rate-low"),
                of(
                        "meter-hum",
                        Part.FLOW_METER,
                        new Amount("pulses a second", 1, 500, 60),
                        "The display shows a flow while all is shut.",
                        FLOW_AND_PRESSURE,
                        (p, at, much, luck) -> p.flow().ifPresent(meter -> meter.hum(much, luck)),
                        "flow-without-travel",
                        "outlet-open",
                        "rate-high"),
                of(
                        "pressure-offset",
                        Part.PRESSURE,
                        new Amount("kPa too much", -300, 300, 60),
                        "The pressure does not go back to zero when the boom is empty.",
                        FLOW_AND_PRESSURE,
                        (p, at, much, luck) -> p.pressure().ifPresent(t -> t.shift(much * TradeUnits.KPA_PA)),
                        "outlet-blocked",
                        "outlet-open"),
                of(
                        "pressure-span",
                        Part.PRESSURE,
                        new Amount("too much, as a share", -0.8, 2, 0.3),
                        "The pressure gauge and the display agree at zero and nowhere else.",
                        FLOW_AND_PRESSURE,
                        (p, at, much, luck) -> p.pressure().ifPresent(t -> t.stretch(1 + much)),
                        "outlet-blocked",
                        "outlet-open"),
                of(
                        "pressure-loop-broken",
                        Part.PRESSURE,
                        Amount.NONE,
                        "The display shows no pressure.",
                        "the loop itself: 0 mA is no reading",
                        (p, at, much, luck) -> p.pressure().ifPresent(t -> t.breakLoop(much > 0)),
                        "sensor-silent"),
                of(
                        "pressure-plugged",
                        Part.PRESSURE,
                        Amount.NONE,
                        "The pressure stays the same while the flow changes.",
                        FLOW_AND_PRESSURE,
                        (p, at, much, luck) -> p.pressure().ifPresent(t -> t.hold(much > 0)),
                        "sensor-implausible",
                        "outlet-blocked",
                        "outlet-open"),
                of(
                        "air-thermometer-warm",
                        Part.AIR,
                        new Amount("°C too warm", -40, 40, 15),
                        "The air temperature is not what the weather says, and all heights are off by a few percent.",
                        "none fitted",
                        (p, at, much, luck) -> p.air().ifPresent(t -> t.warm(much))),
                new Fault(
                        "switch-dead",
                        Part.SWITCHES,
                        PlaceKind.SECTION,
                        Amount.NONE,
                        "One section is shown off while it runs.",
                        FLOW_AND_PRESSURE,
                        (p, at, much, luck) -> p.hub().switchDead(at, much > 0),
                        "outlet-open",
                        "rate-high"),
                of(
                        "wheel-slipping",
                        Part.WHEEL,
                        new Amount("more turns than way, as a share", -0.5, 1, 0.15),
                        "In soft ground the wheel's speed runs ahead of the other one.",
                        "GNSS speed beside it",
                        (p, at, much, luck) -> p.wheel().ifPresent(meter -> meter.factor(1 + much))));
    }
}
