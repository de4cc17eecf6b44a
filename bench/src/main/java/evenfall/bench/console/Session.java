package evenfall.bench.console;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.report.Json;
import evenfall.config.ConfigException;
import evenfall.outlet.OutletCatalogue;
import evenfall.sim.scenario.Scenario;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.jspecify.annotations.Nullable;

/**
 * One trainer's run: one or two lanes over the same ground, driven in step by a thread of its own at the pace that is asked for. A
 * change takes the changed scenario from the start to the present moment as fast as it goes, and on from there.
 */
final class Session {
    /** Without a page for so long a session ends. */
    static final long PATIENCE_MS = 60_000;

    /** A picture so often: faster than an eye follows, slower than a page draws. */
    private static final long TICK_MS = 40;

    private static final long GRID_US = 20_000;
    private static final long STATE_EVERY_MS = 200;
    private static final long CATCH_UP_US = 2_000_000;
    private static final int MOST_ORDERS = 16;
    private static final int MOST_MARKS = 100;
    private static final long LONGEST_WAIT_S = 20;
    private static final int CHUNK = 600;
    private static final double US_PER_S = 1e6;

    /** Simulated seconds a second that stand for as fast as it goes. */
    private static final double NO_LIMIT = 0;

    private final String id;
    private final Scenario plain;
    private final Map<String, Lane> lanes = new TreeMap<>();
    private final List<ObjectNode> marks = new ArrayList<>();
    private final BlockingQueue<Order> orders = new ArrayBlockingQueue<>(MOST_ORDERS);
    private final Thread thread;
    private volatile Map<String, Lane> shown = Map.of();
    private volatile Outbox outbox = new Outbox();
    private volatile boolean watched;
    private volatile boolean truthShown;
    private volatile boolean closed;
    private volatile long unwatchedSinceNs = System.nanoTime();
    private boolean playing;
    private double pace = 1;
    private long nowUs;
    private long catchingUpToUs = -1;

    private record Order(JsonNode json, CompletableFuture<@Nullable String> done) {}

    /**
     * @param scenario what is driven, with its seed
     * @param outletA of lane A; empty for the scenario's own
     * @param outletB of lane B; empty where there is no lane B
     */
    Session(String id, Scenario scenario, Optional<String> outletA, Optional<String> outletB) throws ConfigException {
        this.id = id;
        this.plain = scenario;
        lanes.put("A", lane("A", outletA.isPresent() ? scenario.withOutlet(outletA.get()) : scenario));
        if (outletB.isPresent()) {
            lanes.put("B", lane("B", scenario.withOutlet(outletB.get())));
        }
        shown = Map.copyOf(lanes);
        thread = new Thread(this::run, "session " + id);
        thread.setDaemon(true);
    }

    private Lane lane(String name, Scenario of) throws ConfigException {
        return new Lane(name, of, new Tape(), new Tape(), -1, this::relay);
    }

    void start() {
        thread.start();
    }

    String id() {
        return id;
    }

    boolean isClosed() {
        return closed;
    }

    /** How long no page has looked, ms; 0 where one does. */
    long unwatchedMs() {
        return watched ? 0 : (System.nanoTime() - unwatchedSinceNs) / 1_000_000;
    }

    void close() {
        closed = true;
        outbox.close();
        thread.interrupt();
    }

    /** Runs on the thread of a page's stream: hands it frames until the page or the session is gone. */
    void attend(Door door) throws IOException, InterruptedException {
        Outbox mine = new Outbox();
        Outbox before;
        synchronized (this) {
            before = outbox;
            outbox = mine;
            watched = true;
        }
        before.close();
        try {
            order(Json.object().put("do", "tell"));
            Cursors cursors = new Cursors();
            while (!closed && !mine.isClosed()) {
                List<byte[]> frames = new ArrayList<>(mine.take(STATE_EVERY_MS * 10));
                cursors.addTo(frames);
                door.hand(frames);
            }
        } catch (Refusal e) {
            door.hand(List.of());
        } finally {
            synchronized (this) {
                if (outbox == mine) {
                    watched = false;
                    unwatchedSinceNs = System.nanoTime();
                }
            }
        }
    }

    /** Takes frames to a page. */
    @FunctionalInterface
    interface Door {
        /** Writes them; none to show that the line is alive. */
        void hand(List<byte[]> frames) throws IOException;
    }

    /** How far a page has read the tapes. */
    private final class Cursors {
        /** By the tape itself: lane B may go and come back with another. */
        private final Map<Tape, Long> next = new HashMap<>();

        private boolean truthBefore;

        void addTo(List<byte[]> frames) {
            boolean reveal = truthShown;
            for (Lane lane : new TreeMap<>(shown).values()) {
                read(frames, lane.name(), "console/tape", lane.told());
                if (reveal && !truthBefore) {
                    next.remove(lane.truth());
                }
                if (reveal) {
                    read(frames, lane.name(), "truth/tape", lane.truth());
                }
            }
            truthBefore = reveal;
        }

        private void read(List<byte[]> frames, String lane, String topic, Tape tape) {
            Tape.Chunk chunk = tape.after(next.getOrDefault(tape, 0L), CHUNK);
            if (chunk == null) {
                return;
            }
            next.put(tape, chunk.next());
            StringBuilder json = new StringBuilder("{\"from\":" + chunk.from() + ",\"moments\":[");
            for (int i = 0; i < chunk.moments().size(); i++) {
                json.append(i == 0 ? "" : ",").append(new String(chunk.moments().get(i), StandardCharsets.UTF_8));
            }
            frames.add(Frames.of(lane, topic, json.append("]}").toString().getBytes(StandardCharsets.UTF_8)));
            if (chunk.moments().size() == CHUNK) {
                // There may be more.
                outbox.nudge();
            }
        }
    }

    /**
     * Has the session's thread do something and waits until it is under way.
     *
     * @throws Refusal with one sentence, when it is wrong or cannot be done now
     */
    void order(JsonNode json) throws Refusal, InterruptedException {
        Order order = new Order(json, new CompletableFuture<>());
        if (closed || !orders.offer(order)) {
            throw new Refusal(503, closed ? "The run has ended." : "The run is busy; try again.");
        }
        try {
            String wrong = order.done.get(LONGEST_WAIT_S, TimeUnit.SECONDS);
            if (wrong != null) {
                throw new Refusal(400, wrong);
            }
        } catch (TimeoutException e) {
            throw new Refusal(503, "The run is still catching up; it will do this afterwards.");
        } catch (ExecutionException e) {
            throw new Refusal(500, "The run could not do this: " + e.getCause());
        }
    }

    private void relay(String lane, String topic, byte[] payload, boolean newestOnly) {
        if (!watched) {
            return;
        }
        byte[] frame = Frames.of(lane, topic, payload);
        if (newestOnly) {
            outbox.newest(lane + " " + topic, frame);
        } else {
            outbox.every(frame);
        }
    }

    private void run() {
        long lastNs = System.nanoTime();
        long stateNs = 0;
        try {
            while (!closed) {
                Order order = orders.poll(playing ? TICK_MS : STATE_EVERY_MS, TimeUnit.MILLISECONDS);
                if (order != null) {
                    obey(order);
                    stateNs = 0;
                    // The time that it took is not made up for.
                    lastNs = System.nanoTime();
                }
                long ns = System.nanoTime();
                if (playing && ns - lastNs >= TICK_MS * 1_000_000 / 2) {
                    play(ns - lastNs);
                    lastNs = System.nanoTime();
                    pictures();
                }
                if (ns - stateNs >= STATE_EVERY_MS * 1_000_000) {
                    stateNs = ns;
                    state();
                }
                if (unwatchedMs() > PATIENCE_MS) {
                    close();
                }
            }
        } catch (InterruptedException e) {
            closed = true;
        } finally {
            closed = true;
            outbox.close();
            for (Order left = orders.poll(); left != null; left = orders.poll()) {
                left.done.complete("The run has ended.");
            }
        }
    }

    private void play(long sinceNs) {
        long endUs = endUs();
        if (pace == NO_LIMIT) {
            long untilNs = System.nanoTime() + TICK_MS * 1_000_000;
            while (System.nanoTime() < untilNs && nowUs < endUs) {
                advance(nowUs + 10 * GRID_US);
            }
        } else {
            // A machine that cannot keep the pace falls behind and does not hurry afterwards.
            long stepUs = (long) (Math.min(sinceNs, 5 * TICK_MS * 1_000_000) * pace * 1e-3);
            advance(nowUs + stepUs);
        }
        if (nowUs >= endUs) {
            playing = false;
        }
    }

    private void advance(long toUs) {
        nowUs = Math.min(toUs, endUs());
        for (Lane lane : lanes.values()) {
            lane.advanceTo(nowUs);
        }
        outbox.nudge();
    }

    private long endUs() {
        long endUs = Long.MAX_VALUE;
        for (Lane lane : lanes.values()) {
            endUs = Math.min(endUs, lane.endUs());
        }
        return endUs;
    }

    private void pictures() {
        if (truthShown && watched) {
            for (Lane lane : lanes.values()) {
                outbox.newest(lane.name() + " picture", Frames.of(lane.name(), "truth/picture", lane.picture()));
            }
        }
    }

    private void state() {
        if (!watched) {
            return;
        }
        ObjectNode json = Json.object();
        json.put("playing", playing);
        json.put("pace", pace == NO_LIMIT ? "max" : Integer.toString((int) pace));
        json.set("t", Json.number(nowUs / US_PER_S, 2));
        json.set("end", Json.number(endUs() / US_PER_S, 1));
        json.put("ended", nowUs >= endUs());
        json.put("truth", truthShown);
        json.set("catching_up_to", Json.number(catchingUpToUs < 0 ? null : catchingUpToUs / US_PER_S, 1));
        json.put("dropped", outbox.dropped());
        ArrayNode names = json.putArray("lanes");
        lanes.keySet().forEach(names::add);
        ArrayNode changes = json.putArray("changes");
        marks.forEach(changes::add);
        outbox.newest("state", Frames.of("", "console/state", json));
    }

    private void tell(Lane lane) {
        outbox.newest(lane.name() + " lane", Frames.of(lane.name(), "console/lane", lane.describe()));
    }

    private void obey(Order order) throws InterruptedException {
        JsonNode json = order.json;
        try {
            switch (json.path("do").asText()) {
                case "tell" -> {
                    lanes.values().forEach(this::tell);
                    pictures();
                    order.done.complete(null);
                }
                case "go" -> {
                    playing = nowUs < endUs();
                    order.done.complete(playing ? null : "The run has reached its end; jump back or begin anew.");
                }
                case "pause" -> {
                    playing = false;
                    order.done.complete(null);
                }
                case "step" -> {
                    playing = false;
                    advance(nowUs + 10 * GRID_US);
                    pictures();
                    order.done.complete(null);
                }
                case "pace" -> {
                    pace = pace(json.path("pace").asText());
                    order.done.complete(null);
                }
                case "truth" -> {
                    truthShown = json.path("shown").asBoolean();
                    // A page takes nothing of the truth before it knows that it is to be shown.
                    state();
                    pictures();
                    outbox.nudge();
                    order.done.complete(null);
                }
                case "jump" -> jump(order, json);
                case "change" -> change(order, json);
                default ->
                    order.done.complete(
                            "The run does not know what to do; allowed: go, pause, step, pace, truth, jump, change.");
            }
        } catch (ConfigException e) {
            order.done.complete(sentence(e));
        } catch (Refusal e) {
            order.done.complete(e.sentence());
        } catch (RuntimeException e) {
            playing = false;
            order.done.complete("This could not be done: " + e);
        }
    }

    /** A complaint without the name of the scenario in front, which the page has not written. */
    private String sentence(ConfigException e) {
        String text = String.valueOf(e.getMessage());
        String file = plain.name() + ":";
        return text.startsWith(file) ? text.substring(file.length()).replaceFirst("^(\\d+:)? *", "") : text;
    }

    private static double pace(String word) throws Refusal {
        return switch (word) {
            case "1" -> 1;
            case "2" -> 2;
            case "5" -> 5;
            case "max" -> NO_LIMIT;
            default -> throw new Refusal(400, "There is no such pace; allowed: 1, 2, 5, max.");
        };
    }

    private void jump(Order order, JsonNode json) throws Refusal, ConfigException, InterruptedException {
        double toS = number(json, "to_s").orElse(-1);
        if (!(toS >= 0 && toS <= endUs() / US_PER_S)) {
            throw new Refusal(
                    400, "There is no such moment; allowed: 0 to " + Math.round(endUs() / US_PER_S) + " seconds.");
        }
        long toUs = Math.round(toS * US_PER_S / GRID_US) * GRID_US;
        order.done.complete(null);
        if (toUs < nowUs) {
            marks.removeIf(mark -> mark.path("t").asDouble() * US_PER_S > toUs);
            Map<String, Lane> fresh = new TreeMap<>();
            for (Lane lane : lanes.values()) {
                fresh.put(lane.name(), lane.anew(lane.scenario(), toUs, this::relay));
            }
            takeOver(fresh, toUs);
        } else {
            catchUp(lanes, toUs);
            nowUs = toUs;
        }
        pictures();
    }

    private void change(Order order, JsonNode json) throws Refusal, ConfigException, InterruptedException {
        Map<String, Scenario> wanted = new TreeMap<>();
        ObjectNode mark = Json.object();
        for (Lane lane : lanes.values()) {
            wanted.put(lane.name(), changed(lane, json, mark));
        }
        JsonNode second = json.path("second");
        if (second.isTextual()) {
            // Lane B is what lane A is, but for its outlets; an empty word takes it away.
            Lane first = lanes.get("A");
            wanted.remove("B");
            mark.put("what", "second").put("value", second.asText());
            if (first != null && !second.asText().isEmpty()) {
                wanted.put("B", first.scenario().withOutlet(builtInOutlet(second.asText())));
            }
        }
        if (mark.isEmpty()) {
            throw new Refusal(
                    400,
                    "Nothing is to be changed; allowed: outlet, second, height_m, speed_mps, rate_Lpha, product, fault.");
        }
        Map<String, Lane> fresh = new TreeMap<>();
        for (Map.Entry<String, Scenario> one : wanted.entrySet()) {
            Lane before = lanes.get(one.getKey());
            if (before != null && before.scenario() == one.getValue()) {
                fresh.put(one.getKey(), before);
            } else if (before != null) {
                fresh.put(one.getKey(), before.anew(one.getValue(), nowUs, this::relay));
            } else {
                fresh.put(one.getKey(), lane(one.getKey(), one.getValue()));
            }
        }
        order.done.complete(null);
        mark.set("t", Json.number(nowUs / US_PER_S, 2));
        mark.set("x", Json.number(Objects.requireNonNull(lanes.get("A")).xM(), 1));
        marks.add(mark);
        if (marks.size() > MOST_MARKS) {
            marks.remove(0);
        }
        takeOver(fresh, nowUs);
        pictures();
    }

    private Scenario changed(Lane lane, JsonNode json, ObjectNode mark) throws Refusal, ConfigException {
        Scenario now = lane.scenario();
        Scenario then = now;
        double atS = nowUs / US_PER_S;
        String only = json.path("lane").asText("");
        if (!only.isEmpty() && !lanes.containsKey(only)) {
            throw new Refusal(400, "There is no lane " + only + "; allowed: A, and B where two run side by side.");
        }
        if (!only.isEmpty() && !only.equals(lane.name())) {
            return now;
        }
        Optional<String> outlet = text(json, "outlet");
        if (outlet.isPresent()) {
            then = then.withOutlet(builtInOutlet(outlet.get()));
            mark.put("what", "outlet").put("value", outlet.get()).put("lane", only);
        }
        OptionalDouble height = number(json, "height_m");
        if (height.isPresent()) {
            then = then.withTargetHeight(height.getAsDouble());
            mark.put("what", "height_m").put("value", height.getAsDouble());
        }
        OptionalDouble speed = number(json, "speed_mps");
        if (speed.isPresent()) {
            then = then.withSpeed(speed.getAsDouble(), atS, lane.xM());
            mark.put("what", "speed_mps").put("value", speed.getAsDouble());
        }
        OptionalDouble rate = number(json, "rate_Lpha");
        if (rate.isPresent()) {
            then = then.withTargetRate(rate.getAsDouble());
            mark.put("what", "rate_Lpha").put("value", rate.getAsDouble());
        }
        Optional<String> product = text(json, "product");
        if (product.isPresent()) {
            then = then.withProduct(product.get());
            mark.put("what", "product").put("value", product.get());
        }
        Optional<String> fault = text(json, "fault");
        if (fault.isPresent()) {
            then = then.withFault(fault.get(), text(json, "where"), number(json, "how_much"), atS);
            mark.put("what", "fault").put("value", fault.get());
        }
        return then;
    }

    /** Only ids: a path is for the command line, a page shall not find out what lies on this machine. */
    static String builtInOutlet(String id) throws Refusal {
        if (!OutletCatalogue.ids().contains(id)) {
            throw new Refusal(
                    400, "There is no such outlet type; allowed: " + String.join(", ", OutletCatalogue.ids()) + ".");
        }
        return id;
    }

    private static OptionalDouble number(JsonNode json, String key) throws Refusal {
        JsonNode value = json.path(key);
        if (value.isMissingNode() || value.isNull()) {
            return OptionalDouble.empty();
        }
        if (!value.isNumber()) {
            throw new Refusal(400, key + " is no number.");
        }
        return OptionalDouble.of(value.asDouble());
    }

    private static Optional<String> text(JsonNode json, String key) throws Refusal {
        JsonNode value = json.path(key);
        if (value.isMissingNode() || value.isNull() || value.asText("none").isEmpty()) {
            return Optional.empty();
        }
        if (!value.isTextual()) {
            throw new Refusal(400, key + " is no text.");
        }
        return Optional.of(value.asText());
    }

    /** Brings new lanes to a moment and puts them in the place of the old ones. */
    private void takeOver(Map<String, Lane> fresh, long toUs) throws InterruptedException {
        catchUp(fresh, toUs);
        for (Lane lane : fresh.values()) {
            if (lanes.get(lane.name()) != lane) {
                lane.told().cut(toUs);
                lane.truth().cut(toUs);
            }
        }
        lanes.clear();
        lanes.putAll(fresh);
        shown = Map.copyOf(lanes);
        nowUs = toUs;
        lanes.values().forEach(this::tell);
        outbox.nudge();
    }

    private void catchUp(Map<String, Lane> fresh, long toUs) throws InterruptedException {
        catchingUpToUs = toUs;
        long saidNs = System.nanoTime();
        for (Lane lane : fresh.values()) {
            while (lane.timeUs() < toUs && !closed) {
                lane.advanceTo(Math.min(toUs, lane.timeUs() + CATCH_UP_US));
                if (Thread.interrupted()) {
                    throw new InterruptedException();
                }
                if (System.nanoTime() - saidNs > STATE_EVERY_MS * 1_000_000) {
                    saidNs = System.nanoTime();
                    nowUs = lane.timeUs();
                    state();
                }
            }
        }
        catchingUpToUs = -1;
    }
}
