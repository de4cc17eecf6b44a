package evenfall.config;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** One YAML file, read whole, checked against its schema, its lines remembered. */
public final class ConfigFile {
    /** A configuration of more than this is a mistake (a log, an image); nothing is read of it. */
    public static final long LARGEST_BYTES = 1_000_000;

    private static final YAMLMapper YAML = YAMLMapper.builder().build();

    /** What some editors write before everything else; it says nothing. */
    private static final String BYTE_ORDER_MARK = "\uFEFF";

    private final String name;
    private final ConfigNode root;

    private ConfigFile(String name, JsonNode root, KeyLines lines) {
        this.name = name;
        this.root = new ConfigNode(name, lines, "", root);
    }

    /**
     * Reads a file.
     *
     * @param file YAML (JSON is YAML too), UTF-8
     * @throws ConfigException when it is absent, too large, not YAML, or breaks the schema
     */
    public static ConfigFile read(Path file, ConfigSchema schema) throws ConfigException {
        String name = file.toString();
        try {
            FileCheck.isReadable(file, name, "the path of a readable file");
            if (Files.size(file) > LARGEST_BYTES) {
                throw new ConfigException(
                        name, 0, null, "is larger than 1 MB", "a configuration of at most " + LARGEST_BYTES + " bytes");
            }
            return parse(name, new String(Files.readAllBytes(file), StandardCharsets.UTF_8), schema);
        } catch (IOException e) {
            throw new ConfigException(name, 0, null, "cannot be read (" + FileCheck.reason(e) + ")", "a readable file");
        }
    }

    /**
     * Reads text that is in hand already.
     *
     * @param name what to call the text in complaints
     * @throws ConfigException when it is not YAML, goes beyond plain keys and values, or breaks the schema
     */
    public static ConfigFile parse(String name, String text, ConfigSchema schema) throws ConfigException {
        String plain = text.startsWith(BYTE_ORDER_MARK) ? text.substring(BYTE_ORDER_MARK.length()) : text;
        KeyLines lines = KeyLines.of(name, plain);
        JsonNode tree;
        try {
            tree = YAML.readTree(plain);
        } catch (JacksonException e) {
            int line = e.getLocation() == null ? 0 : e.getLocation().getLineNr();
            throw new ConfigException(
                    name, line, null, "cannot be read (" + e.getOriginalMessage() + ")", "YAML 1.1 text");
        }
        if (tree == null || !tree.isObject()) {
            throw new ConfigException(name, 1, null, "holds no keys", "a YAML file of keys and values");
        }
        schema.check(name, tree, lines);
        return new ConfigFile(name, tree, lines);
    }

    /** The name of the file as the person gave it. */
    public String name() {
        return name;
    }

    /** The outermost group of keys. */
    public ConfigNode root() {
        return root;
    }
}
