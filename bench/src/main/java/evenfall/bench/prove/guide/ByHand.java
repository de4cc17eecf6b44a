package evenfall.bench.prove.guide;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Raw numbers that a person read off and typed, and what makes any raw numbers contradict themselves. */
final class ByHand {
    static final String ECHO_EXAMPLE = "2912 2914 - 2911 … (µs of this sensor, - for no echo, ten or more)";

    private static final Pattern PULSES = Pattern.compile("(\\d{1,10})(?: pulses)? in ([0-9.]+) ?s");
    private static final Pattern METRES = Pattern.compile("([0-9.]+) ?m in ([0-9.]+) ?s");
    private static final Pattern BOTH = Pattern.compile("(\\d{1,10})(?: pulses)? over ([0-9.]+) ?m in ([0-9.]+) ?s");

    private static final Pattern WORDS = Pattern.compile("[\\s,]+");

    /** A gap of more than this in a recording is a cable that came off; the hub speaks ten times a second. */
    private static final double LONGEST_GAP_S = 2;

    private ByHand() {}

    static String countExample(Step.Counting signal) {
        return switch (signal) {
            case FLOW, WHEEL -> "3021 in 60.4 s";
            case RECEIVER -> "99.7 m in 36.2 s";
            case WHEEL_AND_RECEIVER -> "2410 over 99.7 m in 36.2 s";
        };
    }

    static Recording.Count count(String typed, Step.Counting signal) throws Refusal {
        Matcher match = (switch (signal) {
                    case FLOW, WHEEL -> PULSES;
                    case RECEIVER -> METRES;
                    case WHEEL_AND_RECEIVER -> BOTH;
                })
                .matcher(typed.strip());
        if (!match.matches()) {
            throw new Refusal("\"" + typed.strip() + "\" is no count", "for example " + countExample(signal));
        }
        try {
            return switch (signal) {
                case FLOW, WHEEL -> typed(Long.valueOf(match.group(1)), null, match.group(2));
                case RECEIVER -> typed(null, Double.valueOf(match.group(1)), match.group(2));
                case WHEEL_AND_RECEIVER ->
                    typed(Long.valueOf(match.group(1)), Double.valueOf(match.group(2)), match.group(3));
            };
        } catch (NumberFormatException e) {
            throw new Refusal("\"" + typed.strip() + "\" is no count", "for example " + countExample(signal));
        }
    }

    private static Recording.Count typed(@Nullable Long pulses, @Nullable Double metres, String seconds) {
        return new Recording.Count(pulses, metres, Double.parseDouble(seconds), false, false, false, 0);
    }

    static void check(Recording.Count count, Step.Counting signal) throws Refusal {
        boolean needsPulses = signal != Step.Counting.RECEIVER;
        boolean needsMetres = signal == Step.Counting.RECEIVER || signal == Step.Counting.WHEEL_AND_RECEIVER;
        if (count.restarted()) {
            throw new Refusal(
                    "the hub started anew in the middle, so pulses are lost", "a run with the hub powered throughout");
        }
        if (count.longestGapS() > LONGEST_GAP_S) {
            throw new Refusal(
                    "nothing came for " + Dialogue.plain(count.longestGapS()) + " s in the middle",
                    "a run with the cable in place, gaps of at most " + Dialogue.plain(LONGEST_GAP_S) + " s");
        }
        if (needsPulses && count.pulses() == null) {
            throw new Refusal("no counter was heard", "a hub with that sensor on the port");
        }
        if (needsMetres && count.metres() == null) {
            throw new Refusal("the receiver gave no speed", "a receiver with a fix on its port");
        }
        if (count.runningAtStart()) {
            throw new Refusal(
                    "pulses came already when the window began, so the catch and the count are of different times",
                    "begin with all at rest");
        }
        if (count.runningAtEnd()) {
            throw new Refusal(
                    "pulses still came when the window ended, so the catch and the count are of different times",
                    "end with all at rest");
        }
        boolean nothing = (needsPulses && count.pulses() != null && count.pulses() == 0)
                || (needsMetres && count.metres() != null && !(count.metres() > 0));
        if (nothing || !(count.seconds() > 0)) {
            throw new Refusal(
                    nothing ? "nothing was counted" : "the window has no length",
                    "a window in which something passes, as " + countExample(signal));
        }
    }

    static Recording.Echoes echoes(String typed, int sensor) throws Refusal {
        List<Recording.Look> looks = new ArrayList<>();
        for (String word : WORDS.splitAsStream(typed.strip()).toList()) {
            List<@Nullable Long> echoes = new ArrayList<>();
            for (int i = 0; i < sensor; i++) {
                echoes.add(null);
            }
            if (!word.equals("-") && !word.matches("\\d{1,6}")) {
                throw new Refusal("\"" + word + "\" is no echo time", "for example " + ECHO_EXAMPLE);
            }
            echoes.add(word.equals("-") ? null : Long.valueOf(word));
            // The hub's pace.
            looks.add(new Recording.Look(0.05 * looks.size(), echoes));
        }
        return new Recording.Echoes(looks, null, null);
    }
}
