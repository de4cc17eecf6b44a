package evenfall.bench.prove.guide;

import evenfall.bench.prove.measure.Limit;
import evenfall.quantity.Units;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** A script's side of the talk: takes the replies one after another and leaves the script when they are used up. */
final class Dialogue {
    private static final Pattern LABEL = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N} ./_-]{0,39}");

    private final List<Reply> replies;
    private final Setup setup;
    private final List<Guide.Given> given = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private int taken;

    Dialogue(List<Reply> replies, Setup setup) {
        this.replies = replies;
        this.setup = setup;
    }

    /** Something to read before the next question. */
    void say(String line) {
        if (taken == replies.size()) {
            notes.add(line);
        }
    }

    List<String> notes() {
        return notes;
    }

    /** What has been taken so far, with the keys. */
    List<Guide.Given> given() {
        return given;
    }

    Units units() {
        return setup.units();
    }

    Limit limit(Script script, String name) {
        for (Limit limit : script.limits()) {
            if (limit.name().equals(name)) {
                Double set = setup.limits().get(name);
                return set == null ? limit : limit.set(set);
            }
        }
        throw new IllegalStateException("a script asks for a limit that it does not list: " + name);
    }

    private Reply next(Step step) throws Turn {
        if (taken == replies.size()) {
            throw new Turn.Wanted(step);
        }
        Reply reply = replies.get(taken++);
        given.add(new Guide.Given(step.key(), reply));
        return reply;
    }

    private String typed(Step step, @Nullable String usual) throws Turn {
        if (!(next(step) instanceof Reply.Typed typed)) {
            throw new Refusal("a recording is no answer to a question", "a typed answer");
        }
        if (!typed.text().isBlank()) {
            return typed.text().strip();
        }
        if (usual == null) {
            throw new Refusal(
                    "an answer is missing", step instanceof Step.Ask ask ? "for example " + ask.example() : "yes, no");
        }
        given.set(given.size() - 1, new Guide.Given(step.key(), new Reply.Typed(usual)));
        return usual;
    }

    /**
     * A number with a unit, in SI.
     *
     * @param usual with its unit, or null
     * @param low smallest that makes sense, SI
     * @param high largest, SI
     */
    double amount(String key, String words, Kind kind, @Nullable String usual, double low, double high) throws Turn {
        boolean small = key.endsWith("accuracy") || key.endsWith("step");
        String example = small ? kind.smallExample(units()) : kind.example(units());
        String text = typed(new Step.Ask(key, words, kind, usual, List.of(), example), usual);
        double si = kind.si(text, example);
        if (!(si >= low && si <= high)) {
            String unit = kind.unitNames().split(",", 2)[0];
            double size = kind.si("1 " + unit, units());
            throw new Refusal(
                    text + " cannot be", "from " + plain(low / size) + " to " + plain(high / size) + " " + unit);
        }
        return si;
    }

    /** A number as people write it, without zeros at its end. */
    static String plain(double value) {
        return new java.math.BigDecimal(evenfall.quantity.FixedDecimals.text(value, 6))
                .stripTrailingZeros()
                .toPlainString();
    }

    int whole(String key, String words, int low, int high, @Nullable String usual) throws Turn {
        String text = typed(new Step.Ask(key, words, null, usual, List.of(), Integer.toString(low)), usual);
        try {
            int value = Integer.parseInt(text);
            if (value >= low && value <= high) {
                return value;
            }
        } catch (NumberFormatException e) {
            // Falls through to the refusal, which says the same for both.
        }
        throw new Refusal(text + " cannot be", "a whole number from " + low + " to " + high);
    }

    String choice(String key, String words, List<String> choices, @Nullable String usual) throws Turn {
        String text = typed(new Step.Ask(key, words, null, usual, choices, choices.get(0)), usual);
        for (String choice : choices) {
            if (choice.equals(text.toLowerCase(Locale.ROOT))) {
                return choice;
            }
        }
        throw new Refusal("\"" + text + "\" is none of the choices", String.join(", ", choices));
    }

    /** A short name of the person's own. */
    String label(String key, String words, String example, @Nullable String usual) throws Turn {
        String text = typed(new Step.Ask(key, words, null, usual, List.of(), example), usual);
        if (!LABEL.matcher(text).matches()) {
            throw new Refusal("\"" + text + "\" is no short name", "up to 40 letters, digits and blanks");
        }
        return text;
    }

    /** One more of what {@code key} numbers? */
    boolean more(String key, String words, boolean usual) throws Turn {
        String text =
                typed(new Step.More(key, words, usual), usual ? "yes" : "no").toLowerCase(Locale.ROOT);
        return switch (text) {
            case "yes", "y", "true" -> true;
            case "no", "n", "false" -> false;
            default -> throw new Refusal("\"" + text + "\" is neither yes nor no", "yes, no");
        };
    }

    /** Pulses or metres, heard or typed, that can be used. */
    Recording.Count count(String key, String words, Step.Counting signal) throws Turn {
        String example = ByHand.countExample(signal);
        Reply reply = next(new Step.Measure(key, words, signal, example));
        Recording.Count count;
        if (reply instanceof Reply.Typed typed) {
            count = ByHand.count(typed.text(), signal);
        } else if (reply instanceof Reply.Heard heard && heard.recording() instanceof Recording.Count heardCount) {
            count = heardCount;
        } else {
            throw new Refusal("that is no count", "for example " + example);
        }
        ByHand.check(count, signal);
        return count;
    }

    /**
     * Echoes, heard or typed.
     *
     * @param sensor for which typed echoes count, 0 at the left
     */
    Recording.Echoes echoes(String key, String words, double seconds, boolean marked, int sensor) throws Turn {
        Step.Measure step =
                new Step.Measure(key, words, new Step.Echoing(seconds, marked), marked ? null : ByHand.ECHO_EXAMPLE);
        Reply reply = next(step);
        if (reply instanceof Reply.Heard heard && heard.recording() instanceof Recording.Echoes echoes) {
            if (echoes.looks().isEmpty()) {
                throw new Refusal("the hub sent no heights", "a hub with height sensors on that port");
            }
            return echoes;
        }
        if (reply instanceof Reply.Typed typed && !marked) {
            return ByHand.echoes(typed.text(), sensor);
        }
        throw new Refusal("that is no recording of echoes", "a recording from the port");
    }

    Recording.Ports ports() throws Turn {
        Reply reply = next(new Step.Measure("ports", "Looking for serial ports.", new Step.Listing(), null));
        if (reply instanceof Reply.Heard heard && heard.recording() instanceof Recording.Ports ports) {
            return ports;
        }
        throw new Refusal("that is no list of ports", "a list of ports");
    }

    Recording.Line line(String key, Step.Listening signal) throws Turn {
        Reply reply = next(new Step.Measure(
                key, "Listening to " + signal.device() + " at " + signal.baud() + " baud.", signal, null));
        if (reply instanceof Reply.Heard heard && heard.recording() instanceof Recording.Line line) {
            return line;
        }
        throw new Refusal("that is no recording of a line", "a recording of a line");
    }
}
