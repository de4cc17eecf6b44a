package evenfall.bench.replay;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.received.ReportedAlert;
import evenfall.bench.report.Json;
import evenfall.wire.WireCounts;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * The answer of {@code replay --json}. What is not known is null, and {@code why} beside it says the reason, as in the monitor's
 * live messages; an alert without an end says by its {@code state} that the recording ended first.
 */
public final class ReplayJson {
    private ReplayJson() {}

    public static ObjectNode of(ReplayResult result) {
        ObjectNode root = Json.object();
        WireCounts counts = result.wire();
        ObjectNode wire = root.putObject("wire");
        wire.put("sentences", counts.sentences());
        wire.put("accepted", counts.accepted());
        wire.put("ignored", counts.ignored());
        ObjectNode rejected = wire.putObject("rejected");
        rejected.put("checksum", counts.rejectedChecksum());
        rejected.put("malformed", counts.rejectedMalformed());
        rejected.put("too_long", counts.rejectedTooLong());
        GnssSummary receiver = result.gnss();
        ObjectNode gnss = root.putObject("gnss");
        gnss.put("fixes", receiver.fixes());
        gnss.put("first_utc", text(receiver.firstUtc()));
        gnss.put("last_utc", text(receiver.lastUtc()));
        gnss.set("mean_speed_mps", Json.number(receiver.meanSpeedMps(), 6));
        gnss.set("max_speed_mps", Json.number(receiver.maxSpeedMps(), 6));
        String why = receiver.why();
        if (why != null) {
            gnss.put("why", why);
        }
        ArrayNode alerts = root.putArray("alerts");
        for (ReportedAlert alert : result.alerts()) {
            alerts.add(alert(alert));
        }
        root.put("digest", result.digest());
        return root;
    }

    private static ObjectNode alert(ReportedAlert alert) {
        ObjectNode node = Json.object();
        node.put("kind", alert.kind());
        node.put("place", alert.place());
        node.put("state", alert.clearedS() == null ? "ended" : "cleared");
        node.set("since_s", Json.number(alert.sinceS(), 3));
        node.set("raised_s", Json.number(alert.raisedS(), 3));
        node.set("cleared_s", Json.number(alert.clearedS(), 3));
        node.set("value", Json.number(alert.value(), 3));
        node.set("limit", Json.number(alert.limit(), 3));
        node.put("unit", alert.unit());
        node.put("why", alert.why());
        node.put("act", alert.act());
        return node;
    }

    private static @Nullable String text(@Nullable Instant time) {
        return time == null ? null : time.toString();
    }
}
