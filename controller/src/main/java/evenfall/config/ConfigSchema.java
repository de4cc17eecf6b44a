package evenfall.config;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.networknt.schema.JsonNodePath;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaValidatorsConfig;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** A JSON Schema (draft 2020-12) from the program's own resources, and the wording of what breaks it. */
public final class ConfigSchema {
    private static final String IS_MISSING = "is missing";

    private final JsonNode document;
    private final JsonSchema schema;

    private ConfigSchema(JsonNode document) {
        this.document = document;
        this.schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                .getSchema(
                        document,
                        SchemaValidatorsConfig.builder().locale(Locale.ROOT).build());
    }

    /**
     * @param owner class beside whose package the schema lies
     * @param resource its file name
     */
    public static ConfigSchema resource(Class<?> owner, String resource) {
        try (InputStream in = owner.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks its own file " + resource);
            }
            return new ConfigSchema(JsonMapper.builder().build().readTree(in));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Throws for the first violation in the order of the file, what is missing last; says how many more there are. */
    void check(String file, JsonNode root, KeyLines lines) throws ConfigException {
        List<Violation> found = new ArrayList<>();
        for (ValidationMessage message : schema.validate(root)) {
            found.add(violation(root, lines, message));
        }
        if (found.isEmpty()) {
            return;
        }
        // A misspelt key shows as one that is not known and one that is missing: the first of these says more.
        found.sort(Comparator.comparing(Violation::isAbsence)
                .thenComparingInt(Violation::line)
                .thenComparing(Violation::place));
        Violation first = found.get(0);
        int others = found.size() - 1;
        String more = others == 0 ? "" : "; this file has " + others + (others == 1 ? " more fault" : " more faults");
        throw new ConfigException(file, first.line(), first.place(), first.wrong(), first.allowed() + more);
    }

    private record Violation(int line, String place, String wrong, String allowed) {
        boolean isAbsence() {
            return wrong.equals(IS_MISSING);
        }
    }

    private Violation violation(JsonNode root, KeyLines lines, ValidationMessage message) {
        JsonNode rule = rulesAround(message);
        String place = dotted(message.getInstanceLocation());
        JsonNode value = message.getInstanceNode() == null ? root : message.getInstanceNode();
        int line = lines.lineOf(place);
        String property = message.getProperty();
        return switch (message.getType()) {
            case "required" -> new Violation(line, join(place, property), IS_MISSING, allowedFor(rule, property));
            case "additionalProperties", "unevaluatedProperties" -> {
                String stranger = join(place, property);
                yield new Violation(
                        lines.lineOf(stranger), stranger, "is not known here", names(rule.path("properties")));
            }
            default -> new Violation(line, place, brief(value) + " cannot be used", describe(rule));
        };
    }

    private JsonNode rulesAround(ValidationMessage message) {
        JsonNodePath keyword = message.getSchemaLocation().getFragment();
        JsonNode node = document;
        for (int i = 0; i < keyword.getNameCount() - 1; i++) {
            Object name = keyword.getElement(i);
            node = name instanceof Integer index ? node.path(index) : node.path(String.valueOf(name));
        }
        return node;
    }

    private String allowedFor(JsonNode rule, @Nullable String property) {
        return property == null
                ? describe(rule)
                : describe(resolved(rule.path("properties").path(property)));
    }

    private JsonNode resolved(JsonNode rule) {
        String reference = rule.path("$ref").asText("");
        return reference.startsWith("#/") ? document.at(reference.substring(1)) : rule;
    }

    private String describe(JsonNode rule) {
        List<String> parts = new ArrayList<>();
        if (rule.has("enum")) {
            List<String> values = new ArrayList<>();
            rule.get("enum").forEach(v -> values.add(v.asText()));
            parts.add("one of " + String.join(", ", values));
        } else if (rule.has("const")) {
            parts.add(rule.get("const").asText());
        } else if (rule.has("type")) {
            parts.add(kind(rule.get("type")));
        }
        limit(parts, rule, "exclusiveMinimum", "above ");
        limit(parts, rule, "minimum", "at least ");
        limit(parts, rule, "exclusiveMaximum", "below ");
        limit(parts, rule, "maximum", "at most ");
        limit(parts, rule, "minItems", "entries: at least ");
        limit(parts, rule, "maxItems", "entries: at most ");
        limit(parts, rule, "maxLength", "characters: at most ");
        if (rule.has("properties") && !rule.has("enum")) {
            parts.add("with " + names(rule.get("properties")));
        }
        if (rule.has("description")) {
            parts.add(rule.get("description").asText());
        } else if (rule.has("pattern")) {
            parts.add("matching " + rule.get("pattern").asText());
        }
        return parts.isEmpty() ? "see the file's schema" : String.join(", ", parts);
    }

    private static void limit(List<String> parts, JsonNode rule, String keyword, String words) {
        if (rule.has(keyword)) {
            parts.add(words + rule.get(keyword).asText());
        }
    }

    private static String kind(JsonNode type) {
        return switch (type.asText()) {
            case "number" -> "a number";
            case "integer" -> "a whole number";
            case "string" -> "a text";
            case "boolean" -> "true or false";
            case "array" -> "a list";
            case "object" -> "a group of keys";
            default -> "a value of type " + type;
        };
    }

    private static String names(JsonNode properties) {
        List<String> names = new ArrayList<>();
        properties.fieldNames().forEachRemaining(names::add);
        return String.join(", ", names);
    }

    private static String brief(JsonNode value) {
        if (value.isObject()) {
            return "this group of keys";
        }
        if (value.isArray()) {
            return "this list";
        }
        if (value.isNull()) {
            return "an empty value";
        }
        String text = value.asText();
        return text.length() > 60 ? text.substring(0, 60) + "…" : text;
    }

    private static String join(String place, @Nullable String property) {
        return place.isEmpty() ? String.valueOf(property) : place + "." + property;
    }

    private static String dotted(JsonNodePath path) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < path.getNameCount(); i++) {
            Object name = path.getElement(i);
            if (name instanceof Integer index) {
                text.append('[').append(index + 1).append(']');
            } else {
                text.append(text.isEmpty() ? "" : ".").append(name);
            }
        }
        return text.toString();
    }
}
