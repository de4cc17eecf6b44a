package evenfall.bench.prove.trial;

import evenfall.bench.prove.guide.Proof;
import evenfall.bench.prove.guide.Prover;
import evenfall.bench.prove.guide.Recording;
import evenfall.bench.prove.guide.Refusal;
import evenfall.bench.prove.guide.Reply;
import evenfall.bench.prove.guide.Step;
import evenfall.bench.prove.listen.PortTroubleException;
import evenfall.bench.prove.talk.FrontEnd;
import evenfall.bench.report.Wrap;
import evenfall.config.ConfigException;
import evenfall.rig.Rig;
import java.io.IOException;
import java.util.List;
import java.util.function.Consumer;

/** A whole test in a simulated yard, which answers itself, and says at the end what was true. */
public final class Trial implements FrontEnd, AutoCloseable {
    private static final int COLUMNS = 98;

    private final Hands hands;
    private final Consumer<String> say;

    /**
     * @param say where questions, answers and the truth are shown
     */
    public Trial(Prover prover, long seed, Consumer<String> say) throws ConfigException, IOException {
        this.hands = new Hands(prover, seed);
        this.say = say;
    }

    /** The machine as its installer describes it; its constants are not those of the yard. */
    public Rig rig() {
        return hands.rig();
    }

    @Override
    public void notes(List<String> notes) {
        for (String note : notes) {
            Wrap.lines(note, COLUMNS).forEach(line -> say.accept("  " + line));
        }
    }

    @Override
    public Answer answer(Step step) throws ConfigException, InterruptedException {
        if (step instanceof Step.Measure measure) {
            try {
                return new Given(new Reply.Heard(record(measure)));
            } catch (PortTroubleException e) {
                throw new ConfigException(
                        "the trial", 0, step.key(), String.valueOf(e.getMessage()), "a working virtual port");
            }
        }
        String text =
                step instanceof Step.More more ? (hands.goesOn(more) ? "yes" : "no") : hands.answer((Step.Ask) step);
        String words = step instanceof Step.More more ? more.words() : ((Step.Ask) step).words();
        String usual = step instanceof Step.Ask ask ? ask.usual() : null;
        say.accept(words + "  " + (text.isEmpty() && usual != null ? usual : text));
        return new Given(new Reply.Typed(text));
    }

    private Recording record(Step.Measure step) throws PortTroubleException, InterruptedException {
        say.accept(step.words());
        try (Hands.Doing doing = hands.start(step)) {
            doing.await();
            say.accept("  heard: " + doing.soFar());
            return doing.finish();
        }
    }

    @Override
    public void refused(Step step, Refusal refusal) throws ConfigException {
        throw new ConfigException("the trial", 0, step.key(), refusal.wrong(), refusal.allowed());
    }

    /** What was true, beside what was found; nothing for a test without a constant. */
    public List<String> truth(Proof proof) {
        return hands.truth(proof);
    }

    @Override
    public void close() throws IOException {
        hands.close();
    }
}
