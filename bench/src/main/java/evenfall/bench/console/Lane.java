package evenfall.bench.console;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.util.RawValue;
import evenfall.bench.report.Json;
import evenfall.bench.reveal.TruePicture;
import evenfall.bench.reveal.TruthMoments;
import evenfall.config.ConfigException;
import evenfall.judge.Alert;
import evenfall.message.Messages;
import evenfall.message.Payload;
import evenfall.message.Topics;
import evenfall.monitor.Live;
import evenfall.monitor.Outputs;
import evenfall.outlet.OutletType;
import evenfall.outlet.Stream;
import evenfall.quantity.TradeUnits;
import evenfall.replay.SteadyMonitor;
import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.sense.Quantity;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.world.Emission;
import evenfall.sim.world.World;
import evenfall.trace.TraceEvent;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * One machine on the ground: a world, the monitor that listens to its bytes, and what both have left on tape. What the monitor
 * publishes goes on as it is. One owner, one thread; the tapes may be read on another.
 */
final class Lane {
    private static final double US_PER_S = 1e6;

    private final String name;
    private final Scenario scenario;
    private final Rig rig;
    private final World world;
    private final SteadyMonitor monitor;
    private final Tape told;
    private final Tape truth;
    private final long silentUntilUs;
    private final Map<String, byte[]> standing = new LinkedHashMap<>();
    private final Messages messages;
    private final Topics topics;
    private double toldM;
    private double toldUntilUs;
    private boolean ended;

    /** Where what the monitor publishes goes. */
    @FunctionalInterface
    interface Relay {
        /** A message that is retained or not; empty where a retained one is taken away. */
        void message(String lane, String topic, byte[] payload, boolean newestOnly);
    }

    /**
     * @param name {@code A} or {@code B}
     * @param told tape of what the monitor says
     * @param truth tape of what is so
     * @param silentUntilUs up to this moment nothing is put on tape and nothing is relayed: it has been before, on the run that this
     *     one takes over from
     */
    Lane(String name, Scenario scenario, Tape told, Tape truth, long silentUntilUs, Relay relay)
            throws ConfigException {
        this.name = name;
        this.scenario = scenario;
        this.told = told;
        this.truth = truth;
        this.silentUntilUs = silentUntilUs;
        // By way of the text, as the monitor's own process gets it.
        this.rig =
                RigFile.parse("rig.yaml", scenario.rigYaml(Map.of(), "127.0.0.1", 1883, Optional.empty()), Path.of(""));
        this.messages = new Messages(rig);
        this.topics = new Topics(rig.name());
        this.monitor = new SteadyMonitor(
                rig,
                (topic, payload, retained, delivery) -> publish(topic, payload, retained, relay),
                new Moments(),
                (timeUs, unexpected) -> {
                    // Counted by the monitor; the page sees its values end and begin anew.
                });
        this.world = new World(
                scenario,
                new TruthMoments(
                        scenario.world().targetRateM(),
                        scenario.world().fitted().boom().rowM(),
                        (timeUs, json) -> {
                            if (timeUs > silentUntilUs) {
                                truth.add(timeUs, Frames.bytes(json));
                            }
                        }));
    }

    /** The same lane on a changed scenario, from the start; what is on tape stays up to a moment. */
    Lane anew(Scenario changed, long keptUntilUs, Relay relay) throws ConfigException {
        return new Lane(name, changed, told, truth, keptUntilUs, relay);
    }

    private void publish(String topic, Payload payload, boolean retained, Relay relay) {
        if (retained && topic.startsWith(topics.alertsUnder())) {
            if (payload.isEmpty()) {
                standing.remove(topic);
            } else {
                standing.put(topic, payload.bytes());
            }
        }
        if (world.timeUs() > silentUntilUs) {
            relay.message(name, topic, payload.bytes(), topic.equals(topics.live()));
        }
    }

    /** Runs on; stops at the end of the scenario. */
    void advanceTo(long timeUs) {
        while (world.timeUs() < timeUs && !ended) {
            ended = !world.step(this::hear);
        }
        monitor.advanceTo(world.timeUs());
    }

    private void hear(Emission emission) {
        monitor.accept(new TraceEvent.Bytes(emission.timeUs(), emission.port(), emission.bytes()));
    }

    String name() {
        return name;
    }

    Scenario scenario() {
        return scenario;
    }

    long timeUs() {
        return world.timeUs();
    }

    long endUs() {
        return world.endUs();
    }

    double xM() {
        return world.xM();
    }

    Tape told() {
        return told;
    }

    Tape truth() {
        return truth;
    }

    /** The boom over its ground as it truly is. */
    ObjectNode picture() {
        return TruePicture.of(world.rearView());
    }

    /** What a page has to know to draw this lane, with the alerts that stand. */
    ObjectNode describe() {
        ObjectNode json = Json.object();
        json.putRawValue("machine", new RawValue(new String(messages.machine(), StandardCharsets.UTF_8)));
        json.put("title", scenario.title());
        OutletType outlet = rig.outlet();
        ObjectNode type = json.putObject("outlet");
        type.put("id", outlet.id());
        type.put("title", outlet.title());
        type.put("rated_kPa", outlet.ratedPressurePa() / TradeUnits.KPA_PA);
        type.put("low_kPa", outlet.lowPa() / TradeUnits.KPA_PA);
        type.put("high_kPa", outlet.highPa() / TradeUnits.KPA_PA);
        ArrayNode streams = type.putArray("streams");
        for (Stream stream : outlet.streams()) {
            ObjectNode one = streams.addObject();
            one.put("offset_m", stream.offsetM());
            one.put("exit_mps", stream.exitMps());
            one.put("right", stream.rightPart());
            one.put("down", stream.downPart());
            one.put("share", stream.share());
        }
        json.put("product", rig.liquid().id());
        json.put("sg", rig.liquid().specificGravity());
        BoomLayout boom = rig.boom();
        json.put("row_m", boom.rowM());
        ArrayNode at = json.putArray("outlet_m");
        for (int i = 0; i < boom.outlets(); i++) {
            at.add(Json.number(boom.outletRightM(i), 3));
        }
        ArrayNode stands = json.putArray("standing");
        standing.values()
                .forEach(payload -> stands.addRawValue(new RawValue(new String(payload, StandardCharsets.UTF_8))));
        return json;
    }

    /** Puts what the monitor says on tape, five times a second. */
    private final class Moments implements Outputs {
        @Override
        public void live(Live live) {
            double speedMps =
                    live.speedMps().value() == null ? 0 : live.speedMps().get();
            toldM += speedMps * (live.timeUs() - toldUntilUs) / US_PER_S;
            toldUntilUs = live.timeUs();
            if (live.timeUs() <= silentUntilUs) {
                return;
            }
            ObjectNode json = Json.object();
            json.set("t", Json.number(live.timeUs() / US_PER_S, 2));
            json.set("x", Json.number(toldM, 2));
            put(json, "h", live.boom().heightM(), 1, 3);
            put(json, "rate", live.rateM(), TradeUnits.LPHA_M, 1);
            put(json, "err", live.rateError(), 0.01, 1);
            put(json, "p", live.pressurePa(), TradeUnits.KPA_PA, 1);
            json.set("cv", Json.number(cv(live.boom()), 4));
            ArrayNode parts = json.putArray("parts");
            live.segments().forEach(segment -> parts.add(Json.number(cv(segment), 3)));
            told.add(live.timeUs(), Frames.bytes(json));
        }

        private @Nullable Double cv(Live.Segment segment) {
            return segment.rows() == null ? null : segment.rows().rowCv();
        }

        private void put(ObjectNode json, String key, Quantity quantity, double unit, int decimals) {
            Double value = quantity.value();
            json.set(key, Json.number(value == null ? null : value / unit, decimals));
        }

        @Override
        public void raised(Alert alert) {
            // Comes as a message.
        }

        @Override
        public void cleared(Alert alert, long clearedUs) {
            // Comes as a message.
        }
    }
}
