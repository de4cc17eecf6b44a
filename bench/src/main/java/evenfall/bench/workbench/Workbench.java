package evenfall.bench.workbench;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.prove.guide.Prover;
import evenfall.bench.report.Json;
import evenfall.config.ConfigException;
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ThreadLocalRandom;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Answers the bench page: {@code /bench/about}, {@code /bench/proofs}, {@code /bench/signals}, {@code /bench/kept}. A few tests and
 * views at a time; those that no page asks for any longer are closed.
 */
public final class Workbench implements AutoCloseable {
    /** Each holds ports and threads; our choice. */
    private static final int MOST_PROOFS = 6;

    private static final int MOST_VIEWS = 4;

    /** Somebody may go out to the machine and come back; our choice. */
    private static final double IDLE_PROOF_S = 2 * 3600;

    /** Nothing is lost with a simulated one, whose yard goes on working; our choice. */
    private static final double IDLE_SIMULATED_S = 900;

    /** So long nobody has answered when another wants the place; our choice. */
    private static final double GIVES_WAY_S = 600;

    /** A page asks twice a second. */
    private static final double IDLE_VIEW_S = 15;

    private static final long SWEEP_S = 5;
    private static final int LONGEST_TEXT = 2000;
    private static final long SEEDS = 1_000_000;
    private static final String UUID_FORM = "([0-9a-f-]{36})";
    private static final Pattern PROOF = Pattern.compile("/bench/proofs/" + UUID_FORM);
    private static final Pattern VIEW = Pattern.compile("/bench/signals/" + UUID_FORM);
    private static final Pattern KEPT = Pattern.compile("/bench/kept/([^/]{1,200})\\.(json|html)");
    private static final JsonMapper JSON = JsonMapper.builder().build();

    private final Optional<Rig> rig;
    private final Ports ports;
    private final KeptProofs kept;
    private final Map<String, ProofTalk> proofs = new LinkedHashMap<>();
    private final Map<String, SignalView> views = new LinkedHashMap<>();
    private final ScheduledExecutorService sweeper;

    /**
     * @param rig the machine, if there is a file
     * @param devices ports that the system does not list, by path
     * @param folder where results are kept
     */
    @SuppressWarnings("FutureReturnValueIgnored") // It runs until the sweeper is shut down.
    public Workbench(Optional<Rig> rig, List<String> devices, Path folder) {
        this.rig = rig;
        this.ports = new Ports(rig, devices);
        this.kept = new KeptProofs(folder);
        sweeper = Executors.newSingleThreadScheduledExecutor(task -> {
            Thread thread = new Thread(task, "bench-sweeper");
            thread.setDaemon(true);
            return thread;
        });
        sweeper.scheduleWithFixedDelay(this::sweep, SWEEP_S, SWEEP_S, TimeUnit.SECONDS);
    }

    /** Whether a path is one of this page's requests. */
    public static boolean answers(String path) {
        return path.startsWith("/bench/");
    }

    /**
     * One request.
     *
     * @param body of a POST, bounded by whoever calls
     */
    public Answer answer(String method, String path, byte[] body) {
        try {
            return route(method, path, body);
        } catch (Declined e) {
            return Answer.sentence(e.status(), String.valueOf(e.getMessage()));
        }
    }

    private Answer route(String method, String path, byte[] body) throws Declined {
        boolean isGet = method.equals("GET");
        boolean isPost = method.equals("POST");
        Matcher proof = PROOF.matcher(path);
        Matcher view = VIEW.matcher(path);
        Matcher file = KEPT.matcher(path);
        if (path.equals("/bench/about")) {
            return isGet ? Answer.json(about()) : Answer.only("GET");
        }
        if (path.equals("/bench/proofs")) {
            return isPost ? Answer.json(begin(read(body)).view()) : Answer.only("POST");
        }
        if (path.equals("/bench/signals")) {
            return isPost ? Answer.json(watch(read(body)).view()) : Answer.only("POST");
        }
        if (path.equals("/bench/kept")) {
            return isGet ? Answer.json(kept.list(Json.object())) : Answer.only("GET");
        }
        if (proof.matches()) {
            ProofTalk talk = find(proofs, proof.group(1), "This test is not open any longer; begin it anew.");
            if (isPost) {
                act(talk, read(body));
            }
            return isGet || isPost ? Answer.json(talk.view()) : Answer.only("GET, POST");
        }
        if (view.matches()) {
            SignalView one = find(views, view.group(1), "These signals are not watched any longer; begin anew.");
            if (isPost) {
                end(one, read(body));
            }
            return isGet || isPost ? Answer.json(one.view()) : Answer.only("GET, POST");
        }
        if (file.matches()) {
            if (!isGet) {
                return Answer.only("GET");
            }
            String name = file.group(1) + ".json";
            return file.group(2).equals("json") ? kept.json(name) : kept.page(name);
        }
        throw new Declined(404, "There is no such page here.");
    }

    private static JsonNode read(byte[] body) throws Declined {
        try {
            JsonNode json = JSON.readTree(body);
            if (json != null && json.isObject()) {
                return json;
            }
        } catch (JsonProcessingException e) {
            throw new Declined(400, "The request is not JSON.");
        } catch (IOException e) {
            throw new IllegalStateException("memory cannot be read", e);
        }
        throw new Declined(400, "The request is not a JSON object.");
    }

    private ObjectNode about() {
        ObjectNode json = Json.object();
        ArrayNode provers = json.putArray("provers");
        for (Prover prover : Prover.values()) {
            provers.add(prover.word());
        }
        json.put("rig", rig.map(Rig::name).orElse(null));
        ports.list(json.putArray("ports"));
        json.put("folder", kept.folder().toAbsolutePath().normalize().toString());
        return kept.list(json);
    }

    private static <T> T find(Map<String, T> among, String id, String otherwise) throws Declined {
        T one;
        synchronized (among) {
            one = among.get(id);
        }
        if (one == null) {
            throw new Declined(404, otherwise);
        }
        return one;
    }

    private ProofTalk begin(JsonNode asked) throws Declined {
        Prover prover = prover(asked);
        Source source = ports.asked(asked);
        long seed = ThreadLocalRandom.current().nextLong(1, SEEDS);
        if (asked.hasNonNull("seed")) {
            if (!asked.path("seed").canConvertToLong()
                    || !asked.path("seed").isIntegralNumber()
                    || asked.path("seed").asLong() < 0) {
                throw new Declined(400, "This cannot be a seed; allowed: a whole number, 0 or above.");
            }
            seed = asked.path("seed").asLong();
        }
        synchronized (proofs) {
            ProofTalk old = proofs.remove(asked.path("instead_of").asText());
            if (old != null) {
                old.close();
            }
            makeRoom();
            try {
                ProofTalk talk = new ProofTalk(
                        UUID.randomUUID().toString(), prover, source, rig, units(asked), seed, kept.folder());
                proofs.put(talk.id(), talk);
                return talk;
            } catch (ConfigException e) {
                throw new Declined(400, e.getMessage() + ".");
            } catch (IOException e) {
                throw new Declined(503, "A virtual port cannot be had (" + e.getMessage() + ").");
            }
        }
    }

    /** A finished test has its result on the disk, and one that waits long its answers: their places can be had. */
    private void makeRoom() throws Declined {
        if (proofs.size() < MOST_PROOFS) {
            return;
        }
        for (ProofTalk one : List.copyOf(proofs.values())) {
            if (one.isFinished() || one.idleS() > GIVES_WAY_S) {
                proofs.remove(one.id());
                one.close();
                return;
            }
        }
        throw new Declined(503, MOST_PROOFS + " tests are open already; end one of them, or close its page and wait.");
    }

    private static Prover prover(JsonNode asked) throws Declined {
        List<String> words = new ArrayList<>();
        for (Prover prover : Prover.values()) {
            if (prover.word().equals(asked.path("prover").asText())) {
                return prover;
            }
            words.add(prover.word());
        }
        throw new Declined(400, "There is no such test; allowed: " + String.join(", ", words) + ".");
    }

    private static Units units(JsonNode asked) {
        return asked.path("units").asText().equals("us") ? Units.US : Units.METRIC;
    }

    private void act(ProofTalk talk, JsonNode asked) throws Declined {
        switch (asked.path("do").asText()) {
            case "reply" -> {
                JsonNode text = asked.path("text");
                if (!text.isTextual() || text.asText().length() > LONGEST_TEXT) {
                    throw new Declined(400, "The answer cannot be used; allowed: up to 2000 letters.");
                }
                talk.reply(number(asked), text.asText());
            }
            case "back" -> talk.back(number(asked));
            case "record" -> {
                letGo(talk.source());
                talk.record(number(asked));
            }
            case "mark" -> talk.mark();
            case "stop" -> talk.stop();
            case "drop" -> talk.drop();
            case "units" -> talk.units(units(asked));
            case "end" -> {
                synchronized (proofs) {
                    proofs.remove(talk.id());
                }
                talk.close();
            }
            default ->
                throw new Declined(
                        400, "This cannot be done; allowed: reply, back, record, mark, stop, drop, units, end.");
        }
    }

    private static int number(JsonNode asked) throws Declined {
        if (!asked.path("number").isInt()) {
            throw new Declined(400, "The request says not which question it answers; allowed: its number.");
        }
        return asked.path("number").asInt();
    }

    /** A port is heard by one at a time; a test comes before a view. */
    private void letGo(Source source) {
        if (source.kind() == Source.Kind.SIMULATED) {
            return;
        }
        List<SignalView> all;
        synchronized (views) {
            all = List.copyOf(views.values());
        }
        for (SignalView view : all) {
            if (view.isReal()) {
                view.end("A bench test listens now. Begin again after it.");
            }
        }
    }

    private SignalView watch(JsonNode asked) throws Declined {
        Source source = ports.asked(asked);
        if (source.kind() == Source.Kind.BY_HAND) {
            throw new Declined(400, "There is nothing to watch without a port; allowed: simulated, port, rig.");
        }
        synchronized (views) {
            SignalView old = views.remove(asked.path("instead_of").asText());
            if (old != null) {
                old.end("");
            }
            if (views.size() >= MOST_VIEWS) {
                throw new Declined(503, MOST_VIEWS + " views of signals are open already; close a page and wait.");
            }
            String id = UUID.randomUUID().toString();
            try {
                SignalView view = source.kind() == Source.Kind.SIMULATED
                        ? SignalView.simulated(id)
                        : SignalView.of(id, source, rig, ports.behind(source));
                views.put(id, view);
                return view;
            } catch (ConfigException e) {
                throw new Declined(400, e.getMessage() + ".");
            } catch (IOException e) {
                throw new Declined(503, "A virtual port cannot be had (" + e.getMessage() + ").");
            }
        }
    }

    private void end(SignalView view, JsonNode asked) throws Declined {
        if (!asked.path("do").asText().equals("end")) {
            throw new Declined(400, "This cannot be done; allowed: end.");
        }
        synchronized (views) {
            views.remove(view.id());
        }
        view.end("Ended.");
    }

    private void sweep() {
        synchronized (proofs) {
            for (ProofTalk one : List.copyOf(proofs.values())) {
                if (one.idleS() > (one.isSimulated() ? IDLE_SIMULATED_S : IDLE_PROOF_S)) {
                    proofs.remove(one.id());
                    one.close();
                }
            }
        }
        synchronized (views) {
            for (SignalView one : List.copyOf(views.values())) {
                if (one.idleS() > IDLE_VIEW_S) {
                    views.remove(one.id());
                    one.end("");
                }
            }
        }
    }

    @Override
    public void close() {
        sweeper.shutdownNow();
        synchronized (proofs) {
            proofs.values().forEach(ProofTalk::close);
            proofs.clear();
        }
        synchronized (views) {
            views.values().forEach(view -> view.end(""));
            views.clear();
        }
    }
}
