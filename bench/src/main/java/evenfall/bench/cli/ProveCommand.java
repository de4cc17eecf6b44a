package evenfall.bench.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.prove.guide.Guide;
import evenfall.bench.prove.guide.Proof;
import evenfall.bench.prove.guide.Prover;
import evenfall.bench.prove.guide.Setup;
import evenfall.bench.prove.guide.Step;
import evenfall.bench.prove.listen.Instruments;
import evenfall.bench.prove.listen.SerialInstruments;
import evenfall.bench.prove.measure.Limit;
import evenfall.bench.prove.record.AnswersDraft;
import evenfall.bench.prove.record.ProofJson;
import evenfall.bench.prove.record.ResultName;
import evenfall.bench.prove.record.RigConstants;
import evenfall.bench.prove.record.WholeFile;
import evenfall.bench.prove.talk.AnswersFile;
import evenfall.bench.prove.talk.Conversation;
import evenfall.bench.prove.talk.FrontEnd;
import evenfall.bench.prove.talk.Lines;
import evenfall.bench.prove.talk.ProofText;
import evenfall.bench.prove.talk.TerminalTalk;
import evenfall.bench.prove.trial.Trial;
import evenfall.bench.report.Json;
import evenfall.config.ConfigException;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "prove",
        description = {
            "Bench tests of real or simulated sensors, with uncertainty and a written result: flow (catch tests, K-factor), height"
                    + " (known heights, steps, mounting), speed (wheel or receiver), outlets (a catch from each), wiring (what talks on"
                    + " which port; begin here).",
            "It asks step by step. Enter takes the answer in brackets, \"back\" goes one step back."
        })
final class ProveCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private CommonOptions common = new CommonOptions();

    @Parameters(arity = "0..1", paramLabel = "flow|height|speed|outlets|wiring", description = "What is proved.")
    private @Nullable Prover prover;

    @Option(
            names = "--rig",
            paramLabel = "RIG.yaml",
            description = "The machine: its ports, and what is believed so far.")
    private @Nullable Path rigFile;

    @Option(names = "--port", paramLabel = "DEVICE", description = "Listen to this port instead of the rig file's.")
    private @Nullable String port;

    @Option(names = "--baud", paramLabel = "N", description = "Bits per second of --port; 115200 if absent.")
    private int baud = SerialInstruments.usualBaud();

    @Option(
            names = "--answers",
            paramLabel = "FILE",
            description = "Take the answers from a YAML file and ask nothing.")
    private @Nullable Path answers;

    @Option(names = "--ask", description = "With --answers: ask for what the file does not answer.")
    private boolean ask;

    @Option(
            names = "--write-rig",
            paramLabel = "RIG.yaml",
            description = "Write the constants found into this rig file; the old ones stay as dated remarks.")
    private @Nullable Path writeRig;

    @Option(
            names = "--result",
            paramLabel = "FILE",
            description = "Where the result goes; a dated name in this folder if absent.")
    private @Nullable Path result;

    @Option(
            names = "--trial",
            paramLabel = "SEED",
            description =
                    "Show the whole test in a simulated yard, on virtual ports, with constants that only the yard knows.")
    private @Nullable Long trial;

    @Option(names = "--limit", paramLabel = "NAME=VALUE", description = "Judge by another limit (see --limits).")
    private Map<String, Double> limits = new LinkedHashMap<>();

    @Option(names = "--limits", description = "List the limits and where they come from.")
    private boolean listLimits;

    ProveCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ConfigException, IOException, InterruptedException {
        if (prover == null) {
            throw new ConfigException("prove", 0, null, "says not what", "flow, height, speed, outlets, wiring");
        }
        if (listLimits) {
            list(prover);
            return Evenfall.DONE;
        }
        checkLimits(prover);
        checkFiles();
        Instant begun = Instant.now().truncatedTo(ChronoUnit.SECONDS);
        if (trial != null) {
            return inTheYard(prover, trial, begun);
        }
        Optional<Rig> rig = rig();
        Path file = file(prover, rig, begun);
        Setup setup = new Setup(rig, common.units, limits);
        Guide done = talk(Guide.begin(prover, setup), new SerialInstruments(rig, port, baud), file);
        return finish(done, rig, begun, file);
    }

    private int inTheYard(Prover prover, long seed, Instant begun)
            throws ConfigException, IOException, InterruptedException {
        PrintStream talkOut = common.json ? terminal.err() : terminal.out();
        try (Trial yard = new Trial(prover, seed, talkOut::println)) {
            Optional<Rig> rig = Optional.of(yard.rig());
            Path file = file(prover, rig, begun);
            Guide begin = Guide.begin(prover, new Setup(rig, common.units, limits));
            Guide done = Conversation.lead(begin, yard, guide -> {});
            int status = finish(done, rig, begun, file);
            yard.truth(proof(done)).forEach(talkOut::println);
            return status;
        }
    }

    private static Proof proof(Guide done) {
        return ((Step.Finished) done.step()).proof();
    }

    private Path file(Prover prover, Optional<Rig> rig, Instant begun) throws ConfigException {
        Path file = result == null
                ? ResultName.free(Path.of(""), prover, rig.map(Rig::name).orElse(null), trial, begun)
                : result;
        checkFolder(file);
        return file;
    }

    private Guide talk(Guide begin, Instruments instruments, Path file) throws ConfigException, InterruptedException {
        PrintStream talkOut = common.json ? terminal.err() : terminal.out();
        boolean live = terminal.live() && !common.json;
        FrontEnd person = new TerminalTalk(
                new Lines(System.in), talkOut, terminal.paint(), live, terminal.columns(), instruments);
        if (answers != null && !ask) {
            FrontEnd front = new AnswersFile(answers, begin.prover(), instruments, terminal.err()::println, null);
            return Conversation.lead(begin, front, guide -> {});
        }
        FrontEnd front = answers == null
                ? person
                : new AnswersFile(answers, begin.prover(), instruments, terminal.err()::println, person);
        Path draft = file.resolveSibling(file.getFileName() + ".unfinished");
        boolean done = false;
        try {
            Guide end = Conversation.lead(begin, front, guide -> keep(draft, guide));
            done = true;
            return end;
        } finally {
            endDraft(draft, done);
        }
    }

    private void endDraft(Path draft, boolean done) {
        try {
            if (done) {
                Files.deleteIfExists(draft);
            } else if (Files.exists(draft)) {
                terminal.err()
                        .println("evenfall: what was answered is in " + draft + "; go on with --answers and --ask");
            }
        } catch (IOException e) {
            terminal.err().println("evenfall: " + draft + " cannot be removed (" + e.getMessage() + ")");
        }
    }

    /** What was answered is never lost: a test that is broken off goes on with --answers and --ask. */
    private void keep(Path draft, Guide guide) {
        try {
            WholeFile.write(draft, AnswersDraft.of(guide.prover(), guide.given()));
        } catch (IOException e) {
            terminal.err().println("evenfall: " + draft + " cannot be written (" + e.getMessage() + ")");
        }
    }

    private int finish(Guide done, Optional<Rig> rig, Instant begun, Path file) throws ConfigException, IOException {
        Proof proof = proof(done);
        String name = rig.map(Rig::name).orElse(null);
        // The result first: whatever becomes of the rig file, the test was not for nothing.
        WholeFile.write(file, Json.text(ProofJson.of(proof, name, begun.toString(), trial, done.given(), null)) + "\n");
        String written = null;
        if (writeRig != null && !proof.constants().isEmpty()) {
            String day = LocalDate.ofInstant(begun, ZoneId.systemDefault()).toString();
            RigConstants.write(writeRig, proof.constants(), day, proof.prover());
            written = writeRig.toString();
            WholeFile.write(
                    file, Json.text(ProofJson.of(proof, name, begun.toString(), trial, done.given(), written)) + "\n");
        }
        if (common.json) {
            terminal.out()
                    .println(Json.text(ProofJson.of(proof, name, begun.toString(), trial, done.given(), written)));
        } else {
            terminal.out().println();
            terminal.print(ProofText.lines(proof, terminal.paint(), terminal.columns()));
        }
        terminal.err().println("evenfall: result in " + file + (written == null ? "" : ", constants in " + written));
        return proof.passed() ? Evenfall.DONE : Evenfall.FAILED;
    }

    private Optional<Rig> rig() throws ConfigException {
        Path from = rigFile == null ? writeRig : rigFile;
        return from == null ? Optional.empty() : Optional.of(RigFile.read(from));
    }

    private static void checkFolder(Path file) throws ConfigException {
        Path folder = file.toAbsolutePath().getParent();
        if (Files.isDirectory(file) || folder == null || !Files.isWritable(folder)) {
            throw ConfigException.ofOption(
                    "--result", file + " cannot be written", "a file in a folder that can be written to");
        }
    }

    private void checkFiles() throws ConfigException {
        if (ask && answers == null) {
            throw ConfigException.ofOption("--ask", "is given without --answers", "both together");
        }
        if (trial != null && (answers != null || rigFile != null || port != null || writeRig != null)) {
            throw ConfigException.ofOption(
                    "--trial",
                    "is given with --rig, --port, --answers or --write-rig",
                    "alone: the yard has its own machine");
        }
        if (writeRig != null && !Files.isRegularFile(writeRig)) {
            throw ConfigException.ofOption("--write-rig", "there is no file " + writeRig, "the path of a rig file");
        }
        Ranges.within("--baud", baud, 300, 4_000_000, "bits per second");
    }

    private void checkLimits(Prover prover) throws ConfigException {
        List<Limit> known = Guide.limits(prover);
        for (Map.Entry<String, Double> set : limits.entrySet()) {
            if (known.stream().noneMatch(l -> l.name().equals(set.getKey()))) {
                throw ConfigException.ofOption(
                        "--limit",
                        "there is no limit " + set.getKey(),
                        known.stream().map(Limit::name).collect(Collectors.joining(", ")));
            }
            Ranges.within("--limit", set.getValue(), 0, 1e6, "");
        }
    }

    private void list(Prover prover) {
        ObjectNode root = Json.object();
        ArrayNode array = root.putArray("limits");
        for (Limit limit : Guide.limits(prover)) {
            ObjectNode node = array.addObject();
            node.put("limit", limit.name());
            node.put("title", limit.title());
            node.set("at_most_" + limit.unit(), Json.number(limit.value(), 6));
            node.put("source", limit.source());
            if (!common.json) {
                terminal.out()
                        .println(terminal.paint().strong(limit.name())
                                + " ".repeat(Math.max(2, 22 - limit.name().length())) + limit.title() + ": at most "
                                + Json.number(limit.value(), 6).asText() + " " + limit.unit());
                terminal.out().println(" ".repeat(22) + terminal.paint().faint(limit.source()));
            }
        }
        if (common.json) {
            terminal.out().println(Json.text(root));
        }
    }
}
