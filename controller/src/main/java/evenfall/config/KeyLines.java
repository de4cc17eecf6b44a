package evenfall.config;

import java.io.StringReader;
import java.util.ArrayDeque;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.events.AliasEvent;
import org.yaml.snakeyaml.events.CollectionStartEvent;
import org.yaml.snakeyaml.events.DocumentStartEvent;
import org.yaml.snakeyaml.events.Event;
import org.yaml.snakeyaml.events.MappingStartEvent;
import org.yaml.snakeyaml.events.ScalarEvent;

/**
 * On which line of a YAML text each key stands. Places are written as complaints write them: {@code ports[1].baud}.
 *
 * <p>The text is looked through once, from start to end, whatever it holds; what YAML allows and a configuration does not is
 * refused on the way, so that what reads the text afterwards meets plain keys and values only.
 */
final class KeyLines {
    /** The deepest file of this program has eight levels; what goes far beyond that is no configuration. */
    static final int DEEPEST = 20;

    private static final Pattern NO_FINITE_NUMBER = Pattern.compile("[-+]?\\.(inf|Inf|INF)|\\.(nan|NaN|NAN)");

    private final String file;
    private final Map<String, Integer> lineOfPlace = new HashMap<>();
    private final ArrayDeque<Level> levels = new ArrayDeque<>();
    private int documents;

    private KeyLines(String file) {
        this.file = file;
    }

    /**
     * Looks a text through.
     *
     * @param file what to call the text in complaints
     * @throws ConfigException when it is not YAML, or has keys that stand twice, aliases, tags, {@code .nan}, more than one
     *     document or more than {@link #DEEPEST} levels
     */
    static KeyLines of(String file, String text) throws ConfigException {
        KeyLines lines = new KeyLines(file);
        try {
            for (Event event : new Yaml(new LoaderOptions()).parse(new StringReader(text))) {
                lines.take(event);
            }
        } catch (MarkedYAMLException e) {
            int line = e.getProblemMark() == null ? 0 : e.getProblemMark().getLine() + 1;
            throw new ConfigException(file, line, null, "is not YAML (" + e.getProblem() + ")", "YAML 1.1 text");
        } catch (YAMLException e) {
            throw new ConfigException(file, 0, null, "is not YAML (" + firstLine(e) + ")", "YAML 1.1 text");
        }
        return lines;
    }

    /** The line of a place, from 1; of the nearest place around it where it stands nowhere itself; 1 at last. */
    int lineOf(String place) {
        String at = place;
        while (!at.isEmpty()) {
            Integer line = lineOfPlace.get(at);
            if (line != null) {
                return line;
            }
            at = at.substring(0, Math.max(0, Math.max(at.lastIndexOf('.'), at.lastIndexOf('['))));
        }
        return 1;
    }

    /** A group of keys or a list that is still open, and what stands where in it. */
    private static final class Level {
        final String place;
        final boolean group;

        @Nullable
        String key;

        int entries;

        Level(String place, boolean group) {
            this.place = place;
            this.group = group;
        }
    }

    private void take(Event event) throws ConfigException {
        if (event instanceof DocumentStartEvent && ++documents > 1) {
            throw wrong(event, null, "a second document begins here", "one document in a file");
        }
        if (event instanceof AliasEvent alias) {
            throw wrong(
                    event,
                    enter(event),
                    "an alias (*" + alias.getAnchor() + ") cannot be used",
                    "the value written out");
        }
        if (event instanceof ScalarEvent scalar) {
            refuseTag(event, scalar.getTag());
            Level level = levels.peek();
            if (level != null && level.group && level.key == null) {
                key(level, scalar);
            } else {
                value(scalar);
            }
        } else if (event instanceof CollectionStartEvent start) {
            refuseTag(event, start.getTag());
            open(start);
        } else if (event.is(Event.ID.MappingEnd) || event.is(Event.ID.SequenceEnd)) {
            levels.pop();
        }
    }

    private void key(Level level, ScalarEvent scalar) throws ConfigException {
        String key = scalar.getValue();
        String place = level.place.isEmpty() ? key : level.place + "." + key;
        Integer before = lineOfPlace.putIfAbsent(place, line(scalar));
        if (before != null) {
            throw wrong(scalar, place, "stands twice, first on line " + before, "each key once");
        }
        level.key = key;
    }

    private void value(ScalarEvent scalar) throws ConfigException {
        String place = enter(scalar);
        if (scalar.isPlain() && NO_FINITE_NUMBER.matcher(scalar.getValue()).matches()) {
            throw wrong(scalar, place, scalar.getValue() + " cannot be used", "a number in digits");
        }
    }

    private void open(CollectionStartEvent start) throws ConfigException {
        Level around = levels.peek();
        if (around != null && around.group && around.key == null) {
            throw wrong(start, around.place, "a key that is itself a group or a list", "a word for a key");
        }
        String place = enter(start);
        if (levels.size() >= DEEPEST) {
            throw wrong(start, null, "more than " + DEEPEST + " levels of groups and lists", "fewer levels");
        }
        levels.push(new Level(place, start instanceof MappingStartEvent));
    }

    /** Takes the place of a value that begins here: of the key before it, or of the next entry of the list. */
    private String enter(Event event) {
        Level level = levels.peek();
        if (level == null) {
            return "";
        }
        if (level.group) {
            String place = whereNow();
            level.key = null;
            return place;
        }
        level.entries++;
        String place = whereNow();
        lineOfPlace.put(place, line(event));
        return place;
    }

    private String whereNow() {
        Level level = levels.peek();
        if (level == null) {
            return "";
        }
        if (!level.group) {
            return level.place + "[" + level.entries + "]";
        }
        return level.key == null || level.place.isEmpty()
                ? level.place + (level.key == null ? "" : level.key)
                : level.place + "." + level.key;
    }

    private void refuseTag(Event event, @Nullable String tag) throws ConfigException {
        if (tag != null) {
            throw wrong(event, whereNow(), "a tag (" + tag + ") cannot be used", "plain keys and values");
        }
    }

    private ConfigException wrong(Event event, @Nullable String place, String wrong, String allowed) {
        return new ConfigException(file, line(event), place, wrong, allowed);
    }

    private static int line(Event event) {
        return event.getStartMark().getLine() + 1;
    }

    private static String firstLine(YAMLException e) {
        String message = String.valueOf(e.getMessage());
        return message.lines().findFirst().orElse(message);
    }
}
