package evenfall.bench.prove.talk;

import evenfall.bench.prove.guide.Guide;
import evenfall.bench.prove.guide.Refusal;
import evenfall.bench.prove.guide.Step;
import evenfall.config.ConfigException;

/** Leads a guide to its end with a front end's answers. */
public final class Conversation {
    private Conversation() {}

    /** Told after each answer that was taken. */
    @FunctionalInterface
    public interface Keeper {
        void taken(Guide guide);
    }

    /** Ends with a guide whose step is {@link Step.Finished}. */
    public static Guide lead(Guide begin, FrontEnd front, Keeper keeper) throws ConfigException, InterruptedException {
        Guide guide = begin;
        front.notes(guide.notes());
        while (!(guide.step() instanceof Step.Finished)) {
            FrontEnd.Answer answer = front.answer(guide.step());
            if (answer instanceof FrontEnd.Given given) {
                try {
                    guide = guide.reply(given.reply());
                } catch (Refusal e) {
                    front.refused(guide.step(), e);
                    continue;
                }
                keeper.taken(guide);
            } else {
                guide = guide.back();
            }
            front.notes(guide.notes());
        }
        return guide;
    }
}
