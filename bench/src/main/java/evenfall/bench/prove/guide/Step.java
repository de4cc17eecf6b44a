package evenfall.bench.prove.guide;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** What is wanted next. */
public sealed interface Step {

    /** Names the answer in files: {@code runs[2].full}. */
    String key();

    /**
     * A question.
     *
     * @param words the question
     * @param kind what the answer measures; null for words and choices
     * @param usual taken when nothing is typed; null where there is no such answer
     * @param choices what may be typed; empty where that is free
     * @param example how an answer may look
     */
    record Ask(
            String key,
            String words,
            @Nullable Kind kind,
            @Nullable String usual,
            List<String> choices,
            String example) implements Step {
        public Ask {
            choices = List.copyOf(choices);
        }
    }

    /** Whether there is one more of something; in a file the answer is whether the key is there. */
    record More(String key, String words, boolean usual) implements Step {}

    /**
     * A measurement.
     *
     * @param words what to do meanwhile
     * @param signal what to record
     * @param example how the raw numbers may be typed instead; null where they cannot
     */
    record Measure(
            String key,
            String words,
            Signal signal,
            @Nullable String example) implements Step {}

    /** The end. */
    record Finished(Proof proof) implements Step {
        @Override
        public String key() {
            return "";
        }
    }

    /** What to record. */
    sealed interface Signal {}

    /** Pulses or metres, from when the person says until the person says. */
    enum Counting implements Signal {
        FLOW,
        WHEEL,
        RECEIVER,
        WHEEL_AND_RECEIVER
    }

    /**
     * Echoes.
     *
     * @param seconds for so long
     * @param marked whether the person marks a moment about a third in
     */
    record Echoing(double seconds, boolean marked) implements Signal {}

    /** Which ports there are. */
    record Listing() implements Signal {}

    /**
     * One line.
     *
     * @param device path of the port
     * @param baud bits per second
     * @param seconds for so long
     */
    record Listening(String device, int baud, double seconds) implements Signal {}
}
