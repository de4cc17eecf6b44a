package evenfall.bench.prove.talk;

import evenfall.bench.prove.guide.Refusal;
import evenfall.bench.prove.guide.Reply;
import evenfall.bench.prove.guide.Step;
import evenfall.config.ConfigException;
import java.util.List;

/** Who answers. */
public interface FrontEnd {
    /** Shown before the next step. */
    void notes(List<String> notes);

    /**
     * The answer to a step.
     *
     * @return a reply, or {@link Back#ONCE}
     * @throws ConfigException when the answers are at their end or wrong
     */
    Answer answer(Step step) throws ConfigException, InterruptedException;

    /** The last answer cannot be used; it will be asked for again. */
    void refused(Step step, Refusal refusal) throws ConfigException;

    /** A reply or the wish to go back. */
    sealed interface Answer {}

    /** Take this. */
    record Given(Reply reply) implements Answer {}

    /** Go back one step. */
    enum Back implements Answer {
        ONCE
    }
}
