package evenfall.sim.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The one table that both encoders and the decoder are held to; its values are invented, its forms are documented there. */
class GoldenSentencesTest {
    private static final Path TABLE = Path.of("../controller/docs/golden-sentences.tsv");

    private final HubSentences hub = new HubSentences();

    @Test
    void printsEveryGoldenSentenceOfTheKindsItWrites() throws IOException {
        int compared = 0;
        TreeSet<String> kinds = new TreeSet<>();
        List<String> wrong = new ArrayList<>();
        for (String line : Files.readAllLines(TABLE, StandardCharsets.UTF_8)) {
            if (line.startsWith("#") || line.isBlank()) {
                continue;
            }
            String[] columns = line.split("\t", -1);
            if (columns[1].contains(":") || columns[1].equals("ignored")) {
                continue;
            }
            if (columns[1].equals("acknowledged")) {
                // Nothing on a machine says that; the box writes it into its own inputs.
                continue;
            }
            String printed = print(columns[0].substring(1, 3), columns[1], fields(columns[2]));
            if (!printed.equals(columns[0] + "\r\n")) {
                wrong.add(columns[0] + " was printed as " + printed.trim());
            }
            compared++;
            kinds.add(columns[1]);
        }
        assertThat(wrong).isEmpty();
        assertThat(kinds)
                .containsExactly(
                        "air", "flow", "gga", "heights", "hub", "level", "pressure", "rmc", "sections", "vtg", "wheel");
        assertThat(compared).isGreaterThanOrEqualTo(30);
    }

    private String print(String talker, String kind, Map<String, String> f) {
        long tick = f.containsKey("tickUs") ? Long.parseLong(f.get("tickUs")) : 0;
        GnssSentences gnss = new GnssSentences(talker);
        byte[] bytes = switch (kind) {
            case "flow" -> hub.flow(tick, Long.parseLong(f.get("count")), whole(f, "lastEdgeTickUs", 10));
            case "wheel" -> hub.wheel(tick, Long.parseLong(f.get("count")), whole(f, "lastEdgeTickUs", 10));
            case "heights" -> hub.heights(tick, echoes(f.get("echoUs")));
            case "pressure" -> hub.pressure(tick, whole(f, "currentUa", 10));
            case "sections" -> hub.sections(tick, whole(f, "maskHex", 16));
            case "air" -> hub.air(tick, whole(f, "temperatureCentidegC", 10));
            case "level" -> hub.level(tick, whole(f, "counts", 10));
            case "hub" -> hub.hub(tick, whole(f, "bootCount", 10), whole(f, "firmwareVersion", 10));
            case "rmc" -> gnss.rmc(fix(f));
            case "vtg" -> gnss.vtg(fix(f));
            case "gga" -> gnss.gga(fix(f));
            default -> throw new AssertionError("a kind without an encoder: " + kind);
        };
        return new String(bytes, StandardCharsets.US_ASCII);
    }

    private static Fix fix(Map<String, String> f) {
        OptionalLong utc = OptionalLong.empty();
        for (String key : List.of("utcEpochMs", "timeOfDayMs")) {
            if (f.containsKey(key)) {
                utc = OptionalLong.of(Long.parseLong(f.get(key)));
            }
        }
        return new Fix(
                Boolean.parseBoolean(f.get("fix")),
                utc,
                number(f, "latitudeDeg"),
                number(f, "longitudeDeg"),
                number(f, "speedMps"),
                number(f, "courseDeg"),
                f.containsKey("mode") ? f.get("mode").charAt(0) : 0,
                (int) number(f, "quality").orElse(0),
                (int) number(f, "satellites").orElse(0),
                number(f, "hdop"),
                number(f, "altitudeM"),
                number(f, "geoidM"));
    }

    private static OptionalDouble number(Map<String, String> f, String key) {
        return f.containsKey(key) ? OptionalDouble.of(Double.parseDouble(f.get(key))) : OptionalDouble.empty();
    }

    private static long whole(Map<String, String> f, String key, int radix) {
        return f.containsKey(key) ? Long.parseLong(f.get(key), radix) : HubSentences.UNKNOWN;
    }

    private static long[] echoes(String list) {
        String[] parts = list.split(",", -1);
        long[] echoes = new long[parts.length];
        for (int i = 0; i < parts.length; i++) {
            echoes[i] = parts[i].isEmpty() ? HubSentences.UNKNOWN : Long.parseLong(parts[i]);
        }
        return echoes;
    }

    private static Map<String, String> fields(String text) {
        Map<String, String> fields = new TreeMap<>();
        for (String field : text.split(";")) {
            int equals = field.indexOf('=');
            fields.put(field.substring(0, equals), field.substring(equals + 1));
        }
        return fields;
    }
}
