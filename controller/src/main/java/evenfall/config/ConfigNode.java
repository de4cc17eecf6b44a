package evenfall.config;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;

/**
 * One place in a {@link ConfigFile}. The schema has already seen to presence, type and range, so a getter for a key that
 * the schema does not demand must be guarded by {@link #has}; asking without is a fault of the program.
 */
public final class ConfigNode {
    private final String file;
    private final KeyLines lines;
    private final String place;
    private final JsonNode json;

    ConfigNode(String file, KeyLines lines, String place, JsonNode json) {
        this.file = file;
        this.lines = lines;
        this.place = place;
        this.json = json;
    }

    /** Whether a key stands here and has a value. */
    public boolean has(String key) {
        return json.hasNonNull(key);
    }

    /** The group of keys that a key holds. */
    public ConfigNode at(String key) {
        return new ConfigNode(file, lines, placeOf(key), present(key));
    }

    /** A number, in the unit that the key names. */
    public double number(String key) {
        return present(key).asDouble();
    }

    /** A number, in the unit that the key names; {@code otherwise} where the key is absent. */
    public double number(String key, double otherwise) {
        return has(key) ? number(key) : otherwise;
    }

    /** A whole number. */
    public int integer(String key) {
        return present(key).asInt();
    }

    /** A whole number; {@code otherwise} where the key is absent. */
    public int integer(String key, int otherwise) {
        return has(key) ? integer(key) : otherwise;
    }

    /** A whole number up to 2^63 - 1, such as a seed. */
    public long wide(String key) {
        return present(key).asLong();
    }

    /** A text. */
    public String text(String key) {
        return present(key).asText();
    }

    /** A text; {@code otherwise} where the key is absent. */
    public String text(String key, String otherwise) {
        return has(key) ? text(key) : otherwise;
    }

    /** True or false; {@code otherwise} where the key is absent. */
    public boolean flag(String key, boolean otherwise) {
        return has(key) ? present(key).asBoolean() : otherwise;
    }

    /** The entries of a list in order; none where the key is absent. */
    public List<ConfigNode> list(String key) {
        List<ConfigNode> entries = new ArrayList<>();
        JsonNode array = json.path(key);
        for (int i = 0; i < array.size(); i++) {
            entries.add(new ConfigNode(file, lines, placeOf(key) + "[" + (i + 1) + "]", array.get(i)));
        }
        return entries;
    }

    /** The entries of a list of plain numbers; none where the key is absent. */
    public double[] numbers(String key) {
        if (!has(key)) {
            return new double[0];
        }
        JsonNode array = present(key);
        double[] values = new double[array.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = array.get(i).asDouble();
        }
        return values;
    }

    /** This place and all below it as JSON, for handing on to another reader. */
    public String toJson() {
        return json.toString();
    }

    /** The line of a key, from 1; the line of this place where the key is absent. */
    public int lineOf(String key) {
        return lines.lineOf(placeOf(key));
    }

    /** A complaint about a key that the schema alone could not make. */
    public ConfigException wrong(String key, String wrong, String allowed) {
        return new ConfigException(file, lineOf(key), placeOf(key), wrong, allowed);
    }

    private String placeOf(String key) {
        return place.isEmpty() ? key : place + "." + key;
    }

    private JsonNode present(String key) {
        JsonNode value = json.get(key);
        if (value == null) {
            throw new IllegalStateException(
                    file + ": " + placeOf(key) + " was asked for, but the schema lets it be absent");
        }
        return value;
    }
}
