package evenfall.bench.prove.record;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.prove.guide.Recording;
import evenfall.bench.prove.guide.Reply;
import evenfall.bench.report.Json;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Raw numbers as JSON, and back: what was recorded once can be answered again from a file. */
public final class RawJson {
    private static final int DECIMALS = 6;

    private RawJson() {}

    /** A typed answer as text, a recording as an object. */
    public static JsonNode of(Reply reply) {
        return reply instanceof Reply.Typed typed
                ? Json.object().textNode(typed.text())
                : of(((Reply.Heard) reply).recording());
    }

    static ObjectNode of(Recording recording) {
        ObjectNode node = Json.object();
        if (recording instanceof Recording.Count count) {
            node.put("pulses", count.pulses());
            node.set("metres", Json.number(count.metres(), DECIMALS));
            node.set("seconds", Json.number(count.seconds(), DECIMALS));
            node.put("hub_restarted", count.restarted());
            node.put("running_at_start", count.runningAtStart());
            node.put("running_at_end", count.runningAtEnd());
            node.set("longest_gap_s", Json.number(count.longestGapS(), DECIMALS));
        } else if (recording instanceof Recording.Echoes echoes) {
            node.set("air_C", Json.number(echoes.airC(), 3));
            node.set("mark_s", Json.number(echoes.markS(), DECIMALS));
            ArrayNode looks = node.putArray("time_s_and_echoes_us");
            for (Recording.Look look : echoes.looks()) {
                ArrayNode one = looks.addArray();
                one.add(Json.number(look.timeS(), DECIMALS));
                for (Long us : look.echoesUs()) {
                    one.add(us);
                }
            }
        } else if (recording instanceof Recording.Ports ports) {
            ArrayNode found = node.putArray("ports");
            for (Recording.Port port : ports.found()) {
                found.addObject().put("device", port.device()).put("title", port.title());
            }
        } else if (recording instanceof Recording.Line line) {
            node.put("refused", line.refused());
            node.set("seconds", Json.number(line.seconds(), DECIMALS));
            node.put("bytes", line.bytes());
            node.put("sentences", line.counts().sentences());
            node.put("other_lines", line.counts().otherLines());
        }
        return node;
    }

    /**
     * A count or echoes out of a file.
     *
     * @return null when it is neither
     */
    public static @Nullable Recording read(JsonNode node) {
        if (node.has("time_s_and_echoes_us")) {
            List<Recording.Look> looks = new ArrayList<>();
            for (JsonNode one : node.get("time_s_and_echoes_us")) {
                List<@Nullable Long> echoes = new ArrayList<>();
                for (int i = 1; i < one.size(); i++) {
                    echoes.add(one.get(i).isNull() ? null : (Long) one.get(i).asLong());
                }
                looks.add(new Recording.Look(one.path(0).asDouble(), echoes));
            }
            return new Recording.Echoes(looks, number(node, "air_C"), number(node, "mark_s"));
        }
        if (node.has("seconds") && (node.has("pulses") || node.has("metres"))) {
            return new Recording.Count(
                    node.path("pulses").isNumber() ? (Long) node.get("pulses").asLong() : null,
                    number(node, "metres"),
                    node.get("seconds").asDouble(),
                    node.path("hub_restarted").asBoolean(false),
                    node.path("running_at_start").asBoolean(false),
                    node.path("running_at_end").asBoolean(false),
                    node.path("longest_gap_s").asDouble(0));
        }
        return null;
    }

    private static @Nullable Double number(JsonNode node, String key) {
        return node.path(key).isNumber() ? (Double) node.get(key).asDouble() : null;
    }
}
