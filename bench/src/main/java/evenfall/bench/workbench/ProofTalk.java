package evenfall.bench.workbench;

import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.prove.guide.Guide;
import evenfall.bench.prove.guide.Prover;
import evenfall.bench.prove.guide.Recording;
import evenfall.bench.prove.guide.Refusal;
import evenfall.bench.prove.guide.Reply;
import evenfall.bench.prove.guide.Setup;
import evenfall.bench.prove.guide.Step;
import evenfall.bench.prove.listen.Instruments;
import evenfall.bench.prove.listen.PortTroubleException;
import evenfall.bench.prove.listen.SerialInstruments;
import evenfall.bench.prove.listen.Session;
import evenfall.bench.prove.record.AnswersDraft;
import evenfall.bench.prove.record.ProofJson;
import evenfall.bench.prove.record.ResultName;
import evenfall.bench.prove.record.WholeFile;
import evenfall.bench.prove.trial.Hands;
import evenfall.bench.report.Json;
import evenfall.config.ConfigException;
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** One test led from a page: the guide's states so far, and the recording under way. Safe on several threads. */
final class ProofTalk implements AutoCloseable {
    /** Longer than any catch or drive: a page that is gone holds no port for ever. */
    private static final double LONGEST_RECORDING_S = 1800;

    private static final long LOOK_MS = 50;

    private final String id;
    private final Source source;
    private final long seed;
    private final Path folder;
    private final Optional<Rig> rig;
    private final @Nullable Hands hands;
    private final Instruments instruments;
    private final Instant begun = Instant.now().truncatedTo(ChronoUnit.SECONDS);
    private final Path draft;

    /** The first is the beginning, each later one has one reply more. */
    private final List<Guide> trail = new ArrayList<>();

    private Units units;
    private long usedNs = System.nanoTime();
    private @Nullable String reading;
    private @Nullable String said;
    private @Nullable String file;
    private @Nullable Take take;
    private boolean closed;

    /** A recording from its beginning to its end. */
    static final class Take {
        final Step.Measure step;
        final int number;
        private final RateOf rate = new RateOf();
        private @Nullable Thread thread;
        private @Nullable Session session;
        private long beginNs;
        private long markNs;
        private boolean stop;
        private boolean ending;

        Take(Step.Measure step, int number) {
            this.step = step;
            this.number = number;
        }

        boolean wantsMark() {
            return step.signal() instanceof Step.Echoing echoing && echoing.marked();
        }

        String state() {
            return session == null ? "starting" : ending ? "ending" : "recording";
        }
    }

    /**
     * @param seed of the simulated yard, where the source is that
     * @param folder where the result is kept
     */
    ProofTalk(String id, Prover prover, Source source, Optional<Rig> rig, Units units, long seed, Path folder)
            throws ConfigException, IOException {
        this.id = id;
        this.source = source;
        this.seed = seed;
        this.folder = folder;
        this.units = units;
        if (source.kind() == Source.Kind.SIMULATED) {
            hands = new Hands(prover, seed);
            this.rig = Optional.of(hands.rig());
            instruments = new SerialInstruments(this.rig, null, SerialInstruments.usualBaud());
        } else {
            hands = null;
            this.rig = rig;
            boolean ports = source.kind() == Source.Kind.RIG || prover == Prover.WIRING;
            instruments = new SerialInstruments(
                    source.kind() == Source.Kind.BY_HAND && !ports ? Optional.empty() : rig,
                    source.kind() == Source.Kind.PORT ? source.device() : null,
                    source.kind() == Source.Kind.PORT ? source.baud() : SerialInstruments.usualBaud());
        }
        draft = folder.resolve(
                ResultName.free(folder, prover, rig.map(Rig::name).orElse(null), null, begun)
                                .getFileName()
                        + ".unfinished");
        trail.add(Guide.begin(prover, setup()));
        arrive();
    }

    private Setup setup() {
        return new Setup(rig, units, Map.of());
    }

    String id() {
        return id;
    }

    Source source() {
        return source;
    }

    /** How long no page has asked, s; 0 while a recording is under way. */
    synchronized double idleS() {
        return take == null ? (System.nanoTime() - usedNs) * 1e-9 : 0;
    }

    boolean isSimulated() {
        return hands != null;
    }

    synchronized boolean isFinished() {
        return now().step() instanceof Step.Finished;
    }

    private Guide now() {
        return trail.get(trail.size() - 1);
    }

    private int number() {
        return trail.size() - 1;
    }

    private void arrive() {
        reading = hands != null && now().step() instanceof Step.Ask ask ? hands.answer(ask) : null;
    }

    synchronized ObjectNode view() {
        usedNs = System.nanoTime();
        ObjectNode json = Json.object();
        json.put("id", id);
        json.put("source", source.kind().name().toLowerCase(java.util.Locale.ROOT));
        json.put("device", source.device());
        json.put("units", units == Units.US ? "us" : "metric");
        json.put("said", said);
        json.put("reading", reading == null || reading.isEmpty() ? null : reading);
        ProofView.trail(json, trail);
        if (now().step() instanceof Step.Measure measure) {
            json.put("can_record", hands != null || instruments.canRecord(measure.signal()));
        }
        Take taking = take;
        if (taking != null) {
            recording(json.putObject("recording"), taking);
        }
        if (now().step() instanceof Step.Finished finished) {
            ProofView.result(json.putObject("result"), finished.proof(), file);
            if (hands != null) {
                json.put("seed", seed);
                hands.truth(finished.proof()).forEach(json.withArray("truth")::add);
            }
        }
        return json;
    }

    private static void recording(ObjectNode json, Take taking) {
        json.put("state", taking.state());
        json.put("wants_mark", taking.wantsMark() && taking.markNs == 0);
        Session session = taking.session;
        if (session == null) {
            return;
        }
        double elapsedS = (System.nanoTime() - taking.beginNs) * 1e-9;
        double amount = session.amount();
        json.put("so_far", session.soFar());
        json.set("elapsed_s", Json.number(elapsedS, 1));
        json.set("seconds", Json.number(session.seconds(), 1));
        json.put("by_person", session.seconds() == 0);
        if (Double.isFinite(amount)) {
            json.set("amount", Json.number(amount, 1));
            json.set("per_s", Json.number(taking.rate.perS(elapsedS, amount), 1));
            json.put("of", ProofView.counted(taking.step.signal()));
        }
    }

    private void mustBeHere(int number) throws Declined {
        usedNs = System.nanoTime();
        if (number != number()) {
            throw new Declined(409, "That question was answered already, perhaps on another page.");
        }
        if (take != null) {
            throw new Declined(409, "A recording is under way; end it first.");
        }
    }

    /**
     * Answers the present question. What cannot be used leaves the test where it was, with a sentence.
     *
     * @param number of the question, as the page shows it
     */
    synchronized void reply(int number, String text) throws Declined {
        mustBeHere(number);
        if (now().step() instanceof Step.Finished) {
            throw new Declined(409, "The test is over; go back to change an answer.");
        }
        take(new Reply.Typed(text));
    }

    private void take(Reply reply) {
        boolean listened = now().step() instanceof Step.Measure measure && runsOn(measure.signal());
        try {
            trail.add(now().reply(reply));
        } catch (Refusal e) {
            said = sentence(e.wrong(), e.allowed());
            return;
        }
        said = null;
        keep();
        arrive();
        if (listened && now().step() instanceof Step.Measure measure && runsOn(measure.signal())) {
            begin(measure);
        }
    }

    /** Steps that nobody has to do anything for follow one another by themselves. */
    private static boolean runsOn(Step.Signal signal) {
        return signal instanceof Step.Listing || signal instanceof Step.Listening;
    }

    private static String sentence(String wrong, String allowed) {
        return Character.toUpperCase(wrong.charAt(0)) + wrong.substring(1) + ". Allowed: " + allowed + ".";
    }

    synchronized void back(int number) throws Declined {
        mustBeHere(number);
        if (trail.size() == 1) {
            throw new Declined(409, "This is the first question.");
        }
        trail.remove(trail.size() - 1);
        said = null;
        file = null;
        keep();
        arrive();
    }

    /** Asks everything in other units; what was answered stands. */
    synchronized void units(Units wanted) {
        if (wanted == units) {
            return;
        }
        Units before = units;
        units = wanted;
        List<Guide> again = new ArrayList<>();
        again.add(Guide.begin(now().prover(), setup()));
        try {
            for (Guide.Given one : now().given()) {
                again.add(again.get(again.size() - 1).reply(one.reply()));
            }
        } catch (Refusal e) {
            units = before;
            said = "The units cannot be changed in this test.";
            return;
        }
        trail.clear();
        trail.addAll(again);
    }

    synchronized void record(int number) throws Declined {
        mustBeHere(number);
        if (!(now().step() instanceof Step.Measure measure)) {
            throw new Declined(409, "Nothing is to be recorded at this step.");
        }
        if (hands == null && !instruments.canRecord(measure.signal())) {
            throw new Declined(409, "No port is known for this; type what was read off, or begin again with a port.");
        }
        begin(measure);
    }

    private void begin(Step.Measure measure) {
        if (closed) {
            return;
        }
        said = null;
        Take fresh = new Take(measure, number());
        take = fresh;
        Thread thread = new Thread(() -> run(fresh), "bench-recording");
        thread.setDaemon(true);
        fresh.thread = thread;
        thread.start();
    }

    synchronized void mark() throws Declined {
        Take taking = recordingNow();
        if (!taking.wantsMark() || taking.session == null) {
            throw new Declined(409, "There is no moment to mark at this step.");
        }
        if (taking.markNs == 0) {
            taking.markNs = System.nanoTime();
            taking.session.mark();
        }
    }

    synchronized void stop() throws Declined {
        Take taking = recordingNow();
        if (taking.session == null || taking.session.seconds() > 0) {
            throw new Declined(409, "This recording ends by itself; drop it if it is not wanted.");
        }
        taking.stop = true;
    }

    /** Ends a recording without using it. */
    synchronized void drop() throws Declined {
        letGo(recordingNow());
    }

    private void letGo(Take taking) {
        take = null;
        if (taking.thread != null) {
            taking.thread.interrupt();
        }
    }

    private Take recordingNow() throws Declined {
        usedNs = System.nanoTime();
        Take taking = take;
        if (taking == null) {
            throw new Declined(409, "No recording is under way.");
        }
        return taking;
    }

    private void run(Take taking) {
        try (Session session = hands == null ? instruments.start(taking.step.signal()) : hands.start(taking.step)) {
            synchronized (this) {
                taking.beginNs = System.nanoTime();
                taking.session = session;
            }
            while (!isOver(taking, session)) {
                Thread.sleep(LOOK_MS);
            }
            Recording recording = session.finish();
            end(taking, new Reply.Heard(recording), null);
        } catch (PortTroubleException e) {
            String why = String.valueOf(e.getMessage());
            // A port that says nothing is a finding of the wiring test, and trouble anywhere else.
            Reply heard = taking.step.signal() instanceof Step.Listening
                    ? new Reply.Heard(Recording.Line.refused(why))
                    : null;
            end(taking, heard, heard == null ? sentence(why, "a port that is free and speaks") : null);
        } catch (InterruptedException e) {
            end(taking, null, "The recording was interrupted.");
            Thread.currentThread().interrupt();
        } catch (RuntimeException e) {
            end(taking, null, "The recording failed: " + e + ".");
        }
    }

    private synchronized boolean isOver(Take taking, Session session) throws InterruptedException {
        if (take != taking) {
            throw new InterruptedException();
        }
        long nowNs = System.nanoTime();
        double seconds = session.seconds();
        boolean byHands = hands != null && taking.wantsMark();
        boolean over;
        if (byHands) {
            over = ((Hands.Doing) session).isDone();
        } else if (taking.wantsMark()) {
            over = taking.markNs != 0 && (nowNs - taking.markNs) * 1e-9 >= seconds * 2 / 3;
        } else {
            over = taking.stop || (seconds > 0 && (nowNs - taking.beginNs) * 1e-9 >= seconds);
        }
        taking.ending = over || (nowNs - taking.beginNs) * 1e-9 > LONGEST_RECORDING_S;
        return taking.ending;
    }

    private synchronized void end(Take taking, @Nullable Reply reply, @Nullable String why) {
        if (take != taking) {
            return;
        }
        take = null;
        usedNs = System.nanoTime();
        if (reply == null) {
            said = why;
        } else {
            take(reply);
        }
    }

    /** What was answered is never lost; a finished test is a result. */
    private void keep() {
        try {
            if (now().step() instanceof Step.Finished finished) {
                Long trial = hands == null ? null : (Long) seed;
                String name = rig.map(Rig::name).orElse(null);
                Path result = ResultName.free(folder, now().prover(), name, trial, begun);
                WholeFile.write(
                        result,
                        Json.text(ProofJson.of(finished.proof(), name, begun.toString(), trial, now().given(), null))
                                + "\n");
                file = String.valueOf(result.getFileName());
                Files.deleteIfExists(draft);
            } else if (hands == null) {
                WholeFile.write(draft, AnswersDraft.of(now().prover(), now().given()));
            }
        } catch (IOException e) {
            said = "The result cannot be kept in " + folder.toAbsolutePath() + " (" + e.getMessage() + ").";
        }
    }

    @Override
    public void close() {
        synchronized (this) {
            closed = true;
            if (take != null) {
                letGo(take);
            }
        }
        if (hands != null) {
            try {
                hands.close();
            } catch (IOException e) {
                // A virtual port that does not close is the kernel's to clear away.
                return;
            }
        }
    }
}
