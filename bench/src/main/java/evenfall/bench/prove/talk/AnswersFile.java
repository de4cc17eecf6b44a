package evenfall.bench.prove.talk;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import evenfall.bench.prove.guide.Prover;
import evenfall.bench.prove.guide.Recording;
import evenfall.bench.prove.guide.Refusal;
import evenfall.bench.prove.guide.Reply;
import evenfall.bench.prove.guide.Step;
import evenfall.bench.prove.listen.Instruments;
import evenfall.bench.prove.listen.PortTroubleException;
import evenfall.bench.prove.listen.Session;
import evenfall.bench.prove.record.RawJson;
import evenfall.config.ConfigException;
import evenfall.config.ConfigFile;
import evenfall.config.ConfigNode;
import evenfall.config.ConfigSchema;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Answers out of a YAML file. The key of a step is a place in it: {@code runs[2].full}. Where a step has a usual answer the file may
 * be silent. A measurement is a number that was read off, a recording from a result file, or {@code listen 5 s}.
 */
public final class AnswersFile implements FrontEnd {
    private static final Pattern LISTEN = Pattern.compile("listen ([0-9.]+) ?s");

    private static final long TELL_EVERY_NS = 2_000_000_000L;

    private final ConfigNode root;
    private final JsonNode tree;
    private final Instruments instruments;
    private final Consumer<String> progress;
    private final @Nullable FrontEnd otherwise;
    private boolean askedOtherwise;

    /**
     * @param progress what to say while it listens
     * @param otherwise who answers what the file does not; null for nobody
     */
    public AnswersFile(
            Path file, Prover prover, Instruments instruments, Consumer<String> progress, @Nullable FrontEnd otherwise)
            throws ConfigException {
        this.root = ConfigFile.read(
                        file, ConfigSchema.resource(AnswersFile.class, prover.word() + "-answers.schema.json"))
                .root();
        this.instruments = instruments;
        this.progress = progress;
        this.otherwise = otherwise;
        try {
            tree = JsonMapper.builder().build().readTree(root.toJson());
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("JSON that was just written cannot be read", e);
        }
    }

    @Override
    public void notes(List<String> notes) {
        if (askedOtherwise && otherwise != null) {
            otherwise.notes(notes);
        }
    }

    @Override
    public Answer answer(Step step) throws ConfigException, InterruptedException {
        JsonNode value = at(step.key());
        askedOtherwise = false;
        if (step instanceof Step.More) {
            if (value == null && otherwise != null) {
                return other(step);
            }
            boolean no = value != null && value.isTextual() && value.asText().equals("no");
            return typed(value == null || no ? "no" : "yes");
        }
        if (value != null) {
            return step instanceof Step.Measure measure ? measured(measure, value) : typed(value.asText());
        }
        if (step instanceof Step.Measure measure
                && (measure.signal() instanceof Step.Listing || measure.signal() instanceof Step.Listening)) {
            return heard(measure, 0);
        }
        if (otherwise != null) {
            return other(step);
        }
        if (step instanceof Step.Ask ask && ask.usual() != null) {
            return typed("");
        }
        throw root.wrong(step.key(), "is missing", allowed(step));
    }

    private Answer other(Step step) throws ConfigException, InterruptedException {
        if (otherwise == null) {
            throw new IllegalStateException("nobody else answers");
        }
        askedOtherwise = true;
        return otherwise.answer(step);
    }

    private static String allowed(Step step) {
        if (step instanceof Step.Ask ask) {
            return ask.choices().isEmpty() ? "for example " + ask.example() : String.join(", ", ask.choices());
        }
        if (step instanceof Step.Measure measure) {
            return (measure.example() == null ? "" : "for example " + measure.example() + ", or ")
                    + "listen 10 s with a --port or a --rig";
        }
        return "yes, no";
    }

    private static Answer typed(String text) {
        return new Given(new Reply.Typed(text));
    }

    private Answer measured(Step.Measure step, JsonNode value) throws ConfigException, InterruptedException {
        if (value.isObject()) {
            Recording recording = RawJson.read(value);
            if (recording == null) {
                throw root.wrong(step.key(), "is no recording", allowed(step));
            }
            return new Given(new Reply.Heard(recording));
        }
        Matcher listen = LISTEN.matcher(value.asText());
        if (!listen.matches()) {
            return typed(value.asText());
        }
        if (!instruments.canRecord(step.signal())) {
            throw root.wrong(
                    step.key(),
                    "wants to listen, and no port is known for it",
                    "--port DEVICE, or --rig RIG.yaml with that sensor");
        }
        try {
            return heard(step, Double.parseDouble(listen.group(1)));
        } catch (NumberFormatException e) {
            throw root.wrong(step.key(), value.asText() + " cannot be used", "listen and seconds, as listen 10 s");
        }
    }

    private Answer heard(Step.Measure step, double forSeconds) throws ConfigException, InterruptedException {
        progress.accept(step.words());
        try (Session session = instruments.start(step.signal())) {
            double seconds = session.seconds() > 0 ? session.seconds() : forSeconds;
            long endNs = System.nanoTime() + (long) (1e9 * seconds);
            boolean marked = !(step.signal() instanceof Step.Echoing echoing && echoing.marked());
            long markNs = System.nanoTime() + (long) (1e9 * seconds / 3);
            long tellNs = System.nanoTime() + TELL_EVERY_NS;
            for (long left = endNs - System.nanoTime(); left > 0; left = endNs - System.nanoTime()) {
                if (!marked && System.nanoTime() >= markNs) {
                    session.mark();
                    progress.accept("NOW");
                    marked = true;
                }
                Thread.sleep(Math.min(Math.max(1, left / 1_000_000), marked ? 500 : 20));
                if (System.nanoTime() >= tellNs) {
                    progress.accept("  " + session.soFar());
                    tellNs += TELL_EVERY_NS;
                }
            }
            return new Given(new Reply.Heard(session.finish()));
        } catch (PortTroubleException e) {
            if (step.signal() instanceof Step.Listening) {
                return new Given(new Reply.Heard(Recording.Line.refused(String.valueOf(e.getMessage()))));
            }
            throw root.wrong(step.key(), String.valueOf(e.getMessage()), "a port that is free and speaks");
        }
    }

    @Override
    public void refused(Step step, Refusal refusal) throws ConfigException {
        if (askedOtherwise && otherwise != null) {
            otherwise.refused(step, refusal);
            return;
        }
        throw root.wrong(step.key(), refusal.wrong(), refusal.allowed());
    }

    /** What stands at a place, null where nothing does. */
    private @Nullable JsonNode at(String key) {
        JsonNode at = tree;
        for (String part : (Iterable<String>) Pattern.compile("\\.").splitAsStream(key)::iterator) {
            int bracket = part.indexOf('[');
            at = at.path(bracket < 0 ? part : part.substring(0, bracket));
            if (bracket >= 0) {
                at = at.path(Integer.parseInt(part.substring(bracket + 1, part.length() - 1)) - 1);
            }
        }
        return at.isMissingNode() || at.isNull() ? null : at;
    }
}
