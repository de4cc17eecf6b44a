package evenfall.bench.received;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Everything the monitor said in one run.
 *
 * <p>The monitor's clock starts with its own process. {@link #of} moves it onto the scenario's clock by the smallest difference
 * between a {@code live} message's arrival and its own time: the message that was least delayed tells best. What is left is the
 * delay of that one message, well below a tenth of a second on one machine.
 *
 * @param moments {@code live} messages in order of arrival
 * @param alerts in the order in which they rose
 * @param wire what the decoders counted
 * @param clockShiftS what was added to the monitor's own times, s
 */
public record Report(List<ReportedMoment> moments, List<ReportedAlert> alerts, WireTally wire, double clockShiftS) {
    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final double US_PER_S = 1e6;
    private static final double LPM_M3PS = 1e-3 / 60;
    private static final double KPA_PA = 1e3;

    public Report {
        moments = List.copyOf(moments);
        alerts = List.copyOf(alerts);
    }

    /** Of messages that came by a broker: the monitor's times are moved onto the clock of the arrivals. */
    public static Report of(List<Message> messages) throws IOException {
        return new Reader(messages, shiftS(messages)).read();
    }

    /** Of messages whose own times are on the scenario's clock already. */
    public static Report onOneClock(List<Message> messages) throws IOException {
        return new Reader(messages, 0).read();
    }

    /** The same without what was said of times after the end of the scenario. */
    public Report until(double endS) {
        return new Report(
                moments.stream().filter(m -> m.atS() <= endS).toList(),
                alerts.stream().filter(a -> a.raisedS() <= endS).toList(),
                wire,
                clockShiftS);
    }

    private static double shiftS(List<Message> messages) throws IOException {
        double least = Double.POSITIVE_INFINITY;
        for (Message message : messages) {
            if (isLive(message)) {
                double atS = JSON.readTree(message.payload()).path("at_s").asDouble();
                least = Math.min(least, message.arrivalUs() / US_PER_S - atS);
            }
        }
        return Double.isInfinite(least) ? 0 : least;
    }

    private static boolean isLive(Message message) {
        return message.topic().endsWith("/live");
    }

    private static final class Reader {
        private final List<Message> messages;
        private final double shiftS;
        private final List<ReportedMoment> moments = new ArrayList<>();
        private final List<ReportedAlert> alerts = new ArrayList<>();
        private WireTally wire = WireTally.NONE;

        Reader(List<Message> messages, double shiftS) {
            this.messages = messages;
            this.shiftS = shiftS;
        }

        Report read() throws IOException {
            for (Message message : messages) {
                if (message.payload().isEmpty()) {
                    continue;
                }
                if (isLive(message)) {
                    live(message.arrivalUs() / US_PER_S, JSON.readTree(message.payload()));
                } else if (message.topic().contains("/alert/")) {
                    alert(JSON.readTree(message.payload()));
                }
            }
            return new Report(moments, alerts, wire, shiftS);
        }

        private void live(double arrivalS, JsonNode json) {
            List<ReportedMoment.Height> heights = new ArrayList<>();
            for (JsonNode height : json.path("heights")) {
                heights.add(
                        new ReportedMoment.Height(height.path("right_m").asDouble(), value(height.path("height_m"))));
            }
            moments.add(new ReportedMoment(
                    json.path("at_s").asDouble() + shiftS,
                    arrivalS,
                    value(json.path("speed_mps")),
                    times(value(json.path("flow_Lpm")), LPM_M3PS),
                    times(value(json.path("pressure_kPa")), KPA_PA),
                    value(json.path("rate_Lpha")),
                    number(json.path("target_Lpha")),
                    value(json.path("rate_error_pct")),
                    number(json.at("/boom/row_cv")),
                    value(json.path("width_m")),
                    segmentM(json, "left"),
                    segmentM(json, "right"),
                    List.copyOf(heights),
                    gaps(json)));
            JsonNode counts = json.path("wire");
            JsonNode rejected = counts.path("rejected");
            wire = new WireTally(
                    counts.path("sentences").asLong(),
                    counts.path("accepted").asLong(),
                    counts.path("ignored").asLong(),
                    rejected.path("checksum").asLong(),
                    rejected.path("malformed").asLong(),
                    rejected.path("too_long").asLong());
        }

        private static List<ReportedMoment.Gap> gaps(JsonNode json) {
            List<ReportedMoment.Gap> gaps = new ArrayList<>();
            gap(gaps, "speed", json.path("speed_mps"));
            gap(gaps, "flow", json.path("flow_Lpm"));
            gap(gaps, "pressure", json.path("pressure_kPa"));
            gap(gaps, "width switched on", json.path("width_m"));
            gap(gaps, "rate", json.path("rate_Lpha"));
            for (JsonNode height : json.path("heights")) {
                gap(gaps, "height at " + height.path("sensor").asText(), height.path("height_m"));
            }
            return List.copyOf(gaps);
        }

        private static void gap(List<ReportedMoment.Gap> gaps, String what, JsonNode quantity) {
            if (quantity.path("value").isNull()) {
                gaps.add(new ReportedMoment.Gap(what, quantity.path("why").asText()));
            }
        }

        private void alert(JsonNode json) {
            String kind = json.path("kind").asText();
            String place = json.path("place").asText();
            double raisedS = json.path("raised_s").asDouble() + shiftS;
            int known = -1;
            for (int i = 0; i < alerts.size(); i++) {
                ReportedAlert one = alerts.get(i);
                if (one.kind().equals(kind) && one.place().equals(place) && one.raisedS() == raisedS) {
                    known = i;
                }
            }
            if (known < 0) {
                known = alerts.size();
                alerts.add(new ReportedAlert(
                        kind,
                        place,
                        json.path("since_s").asDouble() + shiftS,
                        raisedS,
                        null,
                        number(json.path("value")),
                        json.path("limit").isNumber() ? json.path("limit").asDouble() : null,
                        json.path("unit").asText(),
                        json.path("why").asText(),
                        json.path("act").asText()));
            }
            Double clearedS = number(json.path("cleared_s"));
            if (clearedS != null) {
                alerts.set(known, alerts.get(known).cleared(clearedS + shiftS));
            }
        }

        private static @Nullable Double segmentM(JsonNode json, String name) {
            for (JsonNode segment : json.path("segments")) {
                if (segment.path("name").asText().equals(name)) {
                    return value(segment.path("height_m"));
                }
            }
            return null;
        }

        private static @Nullable Double times(@Nullable Double value, double factor) {
            return value == null ? null : value * factor;
        }

        private static @Nullable Double value(JsonNode quantity) {
            return number(quantity.path("value"));
        }

        private static @Nullable Double number(JsonNode node) {
            return node.isNumber() ? node.asDouble() : null;
        }
    }
}
