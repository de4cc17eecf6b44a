package evenfall.bench.prove.guide;

import evenfall.bench.prove.measure.Limit;
import java.util.ArrayList;
import java.util.List;

/** A test under way: immutable, so that a front end may keep any of its states and go back to it. */
public final class Guide {
    /** More replies than any test asks for: a front end that never ends is stopped. */
    private static final int MOST_REPLIES = 2000;

    private final Prover prover;
    private final Setup setup;
    private final List<Reply> replies;
    private final List<Given> given;
    private final List<String> notes;
    private final Step step;

    /**
     * A reply under the key of its step.
     *
     * @param key as in a file of answers
     * @param reply with the usual answer filled in
     */
    public record Given(String key, Reply reply) {}

    private Guide(Prover prover, Setup setup, List<Reply> replies, List<Given> given, List<String> notes, Step step) {
        this.prover = prover;
        this.setup = setup;
        this.replies = replies;
        this.given = List.copyOf(given);
        this.notes = List.copyOf(notes);
        this.step = step;
    }

    public static Guide begin(Prover prover, Setup setup) {
        try {
            return at(prover, setup, List.of());
        } catch (Refusal e) {
            throw new IllegalStateException("a script refuses before it asks", e);
        }
    }

    private static Guide at(Prover prover, Setup setup, List<Reply> replies) throws Refusal {
        Dialogue dialogue = new Dialogue(replies, setup);
        Step step;
        try {
            step = new Step.Finished(prover.script().run(dialogue, setup));
        } catch (Turn.Wanted e) {
            step = e.step();
        } catch (Refusal e) {
            throw e;
        } catch (Turn e) {
            throw new IllegalStateException("there is no other turn", e);
        }
        return new Guide(prover, setup, replies, dialogue.given(), dialogue.notes(), step);
    }

    /** What is wanted now, or the end. */
    public Step step() {
        return step;
    }

    /** What to read before that. */
    public List<String> notes() {
        return notes;
    }

    /** What has been given so far. */
    public List<Given> given() {
        return given;
    }

    public Prover prover() {
        return prover;
    }

    /**
     * The guide after one more reply.
     *
     * @throws Refusal when it cannot be used; this guide is as it was
     */
    public Guide reply(Reply reply) throws Refusal {
        if (step instanceof Step.Finished) {
            throw new IllegalStateException("the test is over");
        }
        if (replies.size() >= MOST_REPLIES) {
            throw new Refusal("that is reply number " + (replies.size() + 1), "at most " + MOST_REPLIES);
        }
        List<Reply> longer = new ArrayList<>(replies);
        longer.add(reply);
        return at(prover, setup, List.copyOf(longer));
    }

    /** The guide before the last reply; this one where there is none. */
    public Guide back() {
        try {
            return replies.isEmpty() ? this : at(prover, setup, replies.subList(0, replies.size() - 1));
        } catch (Refusal e) {
            throw new IllegalStateException("a reply was taken before and is refused now", e);
        }
    }

    /** The limits of a test as they are by default. */
    public static List<Limit> limits(Prover prover) {
        return prover.script().limits();
    }
}
