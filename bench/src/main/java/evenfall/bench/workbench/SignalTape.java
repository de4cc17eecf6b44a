package evenfall.bench.workbench;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.report.Json;
import evenfall.rig.Rig;
import evenfall.sense.AirSense;
import evenfall.sense.ArrivalClock;
import evenfall.sense.FlowSense;
import evenfall.sense.HeightSense;
import evenfall.sense.PressureSense;
import evenfall.sense.Quantity;
import evenfall.sense.SpeedSense;
import evenfall.sense.Unknown;
import evenfall.sense.WheelSense;
import evenfall.wire.AirTemperature;
import evenfall.wire.FlowPulses;
import evenfall.wire.Gga;
import evenfall.wire.HeightEchoes;
import evenfall.wire.HubIdentity;
import evenfall.wire.HubSentence;
import evenfall.wire.PressureCurrent;
import evenfall.wire.Rmc;
import evenfall.wire.SectionSwitches;
import evenfall.wire.SentenceHandler;
import evenfall.wire.WheelPulses;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Signals of all ports as the board's own senses take them. With a rig file in its quantities; without, pulses a second, milliamperes
 * and the distance under each height sensor. For one thread at a time.
 */
final class SignalTape {
    private static final long TICK_RANGE_US = 1L << 32;
    private static final int MOST_HEIGHTS = 32;

    /** Where no rig file says: the hub's slowest sentence comes once a second. Our choice. */
    private static final long USUAL_SILENCE_US = 1_500_000;

    /** A receiver may speak once a second. */
    private static final long RECEIVER_PERIOD_US = 1_000_000;

    private static final double USUAL_AIR_C = 15;

    /** What sentences tell of. */
    enum Kind {
        FLOW,
        PRESSURE,
        HEIGHT,
        WHEEL,
        RECEIVER,
        AIR,
        SECTIONS,
        HUB
    }

    private record Heard(long timeUs, String port) {}

    private final Optional<Rig> rig;
    private final long silenceUs;
    private final FlowSense flow;
    private final @Nullable PressureSense pressure;
    private final List<HeightSense> heights = new ArrayList<>();
    private final SpeedSense speed;
    private final SpeedSense wheelsOwn;
    private final WheelSense wheel;
    private final AirSense air;
    private final Map<Kind, Heard> heard = new EnumMap<>(Kind.class);
    private long flowCount = -1;
    private long wheelCount = -1;
    private @Nullable Double currentA;
    private @Nullable Long sections;
    private long boots = -1;
    private int quality = -1;
    private int satellites = -1;

    SignalTape(Optional<Rig> rig) {
        this.rig = rig;
        silenceUs = rig.map(r -> Math.round(r.limits().silenceS() * 1e6)).orElse(USUAL_SILENCE_US);
        flow = new FlowSense(
                rig.flatMap(r -> r.sensors().flow()).map(Rig.Flow::pulsesPerM3).orElse(1.0));
        pressure =
                rig.flatMap(r -> r.sensors().pressure()).map(PressureSense::new).orElse(null);
        rig.ifPresent(r -> r.sensors().heights().forEach(h -> heights.add(new HeightSense(h.aboveOutletM()))));
        speed = new SpeedSense(silenceUs + RECEIVER_PERIOD_US);
        wheelsOwn = new SpeedSense(silenceUs);
        wheel = new WheelSense(
                rig.flatMap(r -> r.sensors().wheel()).map(Rig.Wheel::pulsesPerM).orElse(1.0), wheelsOwn);
        air = new AirSense(rig.map(r -> r.sensors().air().fixedC()).orElse(USUAL_AIR_C));
    }

    /** A handler for the sentences of one port. */
    PortTape port(String name) {
        return new PortTape(name);
    }

    /** One port's sentences, with the clock of the hub behind it. */
    final class PortTape implements SentenceHandler {
        private final String port;
        private final ArrivalClock clock = new ArrivalClock(TICK_RANGE_US, 0);
        private long nowUs;

        PortTape(String port) {
            this.port = port;
        }

        void now(long timeUs) {
            nowUs = timeUs;
        }

        private long take(Kind kind, HubSentence sentence) {
            heard.put(kind, new Heard(nowUs, port));
            if (clock.hear(nowUs, sentence.tickUs()) == ArrivalClock.Step.RESTARTED) {
                flow.onRestart();
                wheel.onRestart();
            }
            return clock.eventUs(sentence.tickUs());
        }

        @Override
        public void onHub(HubIdentity hub) {
            take(Kind.HUB, hub);
            boots = hub.bootCount();
        }

        @Override
        public void onFlow(FlowPulses pulses) {
            long timeUs = take(Kind.FLOW, pulses);
            flowCount = pulses.count();
            if (pulses.hasLastEdge()) {
                flow.onPulses(timeUs, pulses.tickUs(), pulses.count(), pulses.lastEdgeTickUs());
            } else {
                flow.onNoPulseYet(timeUs, pulses.tickUs());
            }
        }

        @Override
        public void onWheel(WheelPulses pulses) {
            long timeUs = take(Kind.WHEEL, pulses);
            wheelCount = pulses.count();
            if (pulses.hasLastEdge()) {
                wheel.onPulses(nowUs, timeUs, pulses.tickUs(), pulses.count(), pulses.lastEdgeTickUs());
            } else {
                wheel.onNoPulseYet(nowUs, timeUs, pulses.tickUs());
            }
        }

        @Override
        public void onHeights(HeightEchoes echoes) {
            long timeUs = take(Kind.HEIGHT, echoes);
            while (rig.isEmpty() && heights.size() < Math.min(echoes.sensors(), MOST_HEIGHTS)) {
                heights.add(new HeightSense(0));
            }
            for (int i = 0; i < heights.size(); i++) {
                if (i < echoes.sensors() && echoes.hasEcho(i)) {
                    heights.get(i).onEcho(timeUs, echoes.echoUs(i), air.airC(nowUs), air.isMeasured(nowUs));
                } else {
                    heights.get(i).onNoEcho(timeUs);
                }
            }
        }

        @Override
        public void onPressure(PressureCurrent current) {
            long timeUs = take(Kind.PRESSURE, current);
            currentA = current.hasCurrent() ? (Double) (1e-6 * current.currentUa()) : null;
            if (pressure != null && current.hasCurrent()) {
                pressure.onCurrent(timeUs, 1e-6 * current.currentUa());
            } else if (pressure != null) {
                pressure.onNoCurrent(timeUs);
            }
        }

        @Override
        public void onSections(SectionSwitches switches) {
            take(Kind.SECTIONS, switches);
            sections = switches.hasMask() ? (Long) switches.mask() : null;
        }

        @Override
        public void onAir(AirTemperature temperature) {
            long timeUs = take(Kind.AIR, temperature);
            if (temperature.hasTemperature()) {
                air.onTemperature(timeUs, 0.01 * temperature.temperatureCentidegC());
            }
        }

        @Override
        public void onGga(Gga gga) {
            quality = gga.hasQuality() ? gga.quality() : -1;
            satellites = gga.hasSatellites() ? gga.satellites() : -1;
        }

        @Override
        public void onRmc(Rmc rmc) {
            heard.put(Kind.RECEIVER, new Heard(nowUs, port));
            if (!rmc.hasFix()) {
                speed.onNoFix(nowUs);
            } else if (rmc.hasSpeed()) {
                speed.onFix(nowUs, rmc.speedMps());
            } else {
                speed.onFixWithoutSpeed(nowUs);
            }
        }
    }

    /**
     * All signals.
     *
     * @param gone why a port is not open; null where it is
     */
    void put(ArrayNode into, long nowUs, Function<String, @Nullable String> gone) {
        boolean withRig = rig.isPresent();
        Shown shown = new Shown(into, nowUs, gone);
        boolean k = rig.flatMap(r -> r.sensors().flow()).isPresent();
        ObjectNode one =
                shown.add(Kind.FLOW, "", flow.flowM3ps(nowUs, silenceUs), k ? "flow" : "pulses", k ? 60_000 : 1);
        count(one, flowCount);
        one = pressure != null
                ? shown.add(Kind.PRESSURE, "", pressure.pressurePa(nowUs, silenceUs), "pressure", 1e-3)
                : shown.add(Kind.PRESSURE, "", current(nowUs), "current", 1e3);
        if (currentA != null) {
            one.set("current_mA", Json.number(1e3 * currentA, 2));
        }
        for (int i = 0; i < heights.size(); i++) {
            String name = rig.isPresent() ? rig.get().sensors().heights().get(i).name() : Integer.toString(i + 1);
            shown.add(Kind.HEIGHT, name, heights.get(i).heightM(nowUs, silenceUs), withRig ? "height" : "distance", 1);
        }
        boolean w = rig.flatMap(r -> r.sensors().wheel()).isPresent();
        one = shown.add(Kind.WHEEL, "", wheel.speedMps(nowUs, silenceUs), w ? "speed" : "pulses", 1);
        count(one, wheelCount);
        one = shown.add(Kind.RECEIVER, "", speed.speedMps(nowUs, silenceUs + RECEIVER_PERIOD_US), "speed", 1);
        if (quality >= 0) {
            one.put("quality", quality);
        }
        if (satellites >= 0) {
            one.put("satellites", satellites);
        }
        shown.add(Kind.AIR, "", airC(nowUs), "temperature", 1);
        shown.add(Kind.SECTIONS, "", mask(nowUs), "mask", 1);
        shown.add(Kind.HUB, "", known(Kind.HUB, nowUs, boots < 0 ? null : (Double) (double) boots), "starts", 1);
    }

    private static void count(ObjectNode one, long count) {
        if (count >= 0) {
            one.put("count", count);
        }
    }

    private Quantity current(long nowUs) {
        return known(Kind.PRESSURE, nowUs, currentA);
    }

    private Quantity airC(long nowUs) {
        return known(Kind.AIR, nowUs, air.isMeasured(nowUs) ? (Double) air.airC(nowUs) : null);
    }

    private Quantity mask(long nowUs) {
        return known(Kind.SECTIONS, nowUs, sections == null ? null : (Double) (double) sections);
    }

    private Quantity known(Kind kind, long nowUs, @Nullable Double value) {
        Heard last = heard.get(kind);
        if (last == null) {
            return Quantity.unknown(Unknown.NOT_YET, -1);
        }
        long ageUs = nowUs - last.timeUs();
        // Who the hub is and how warm the air is comes once a second or less.
        long allowedUs = kind == Kind.HUB || kind == Kind.AIR ? silenceUs + RECEIVER_PERIOD_US : silenceUs;
        if (ageUs > allowedUs) {
            return Quantity.unknown(Unknown.SILENT, ageUs);
        }
        return value == null ? Quantity.unknown(Unknown.LOOP_BROKEN, ageUs) : Quantity.known(value, ageUs);
    }

    /** Rows under way. */
    private final class Shown {
        private static final double LONG_AGO_S = 3600;
        private final ArrayNode into;
        private final long nowUs;
        private final Function<String, @Nullable String> gone;

        Shown(ArrayNode into, long nowUs, Function<String, @Nullable String> gone) {
            this.into = into;
            this.nowUs = nowUs;
            this.gone = gone;
        }

        ObjectNode add(Kind kind, String name, Quantity quantity, String unit, double scale) {
            ObjectNode one = into.addObject();
            one.put("kind", kind.name().toLowerCase(java.util.Locale.ROOT));
            one.put("name", name);
            one.put("quantity", unit);
            Heard last = heard.get(kind);
            String why = last == null ? null : gone.apply(last.port());
            Unknown unknown = quantity.unknown();
            boolean isKnown = why == null && quantity.isKnown();
            one.set("value", Json.number(isKnown ? (Double) (quantity.get() * scale) : null, 4));
            one.put("why", why != null ? why : unknown == null ? null : unknown.words());
            one.set(
                    "age_s",
                    Json.number(
                            last == null ? null : (Double) Math.min(LONG_AGO_S, (nowUs - last.timeUs()) * 1e-6), 2));
            return one;
        }
    }
}
