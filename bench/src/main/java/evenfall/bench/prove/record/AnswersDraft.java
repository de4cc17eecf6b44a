package evenfall.bench.prove.record;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.prove.guide.Guide;
import evenfall.bench.prove.guide.Prover;
import evenfall.bench.prove.guide.Reply;
import evenfall.bench.report.Json;
import java.util.List;

/** What has been answered so far, in the form of a file of answers, so that a test that is broken off can go on. */
public final class AnswersDraft {
    private AnswersDraft() {}

    /** JSON, which is YAML too. */
    public static String of(Prover prover, List<Guide.Given> given) {
        ObjectNode root = Json.object();
        root.put("prove", prover.word());
        for (Guide.Given one : given) {
            boolean whether = one.reply() instanceof Reply.Typed typed
                    && (typed.text().equalsIgnoreCase("yes") || typed.text().equalsIgnoreCase("no"));
            // Whether there is one more of something is told by its being there.
            if (!whether) {
                put(root, one.key(), RawJson.of(one.reply()));
            }
        }
        return Json.text(root) + "\n";
    }

    private static void put(ObjectNode root, String key, JsonNode value) {
        ObjectNode at = root;
        String rest = key;
        int dot = rest.indexOf('.');
        while (dot >= 0) {
            at = (ObjectNode) place(at, rest.substring(0, dot), Json.object());
            rest = rest.substring(dot + 1);
            dot = rest.indexOf('.');
        }
        place(at, rest, value);
    }

    /** The value at a name with or without a number, put there when nothing is. */
    private static JsonNode place(ObjectNode at, String part, JsonNode value) {
        int bracket = part.indexOf('[');
        if (bracket < 0) {
            JsonNode there = at.get(part);
            if (there == null) {
                at.set(part, value);
                return value;
            }
            return there;
        }
        String name = part.substring(0, bracket);
        int number = Integer.parseInt(part.substring(bracket + 1, part.length() - 1));
        ArrayNode array = at.has(name) ? (ArrayNode) at.get(name) : at.putArray(name);
        if (array.size() < number) {
            array.add(value);
            return value;
        }
        return array.get(number - 1);
    }
}
