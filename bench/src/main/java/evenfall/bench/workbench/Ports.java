package evenfall.bench.workbench;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import evenfall.bench.prove.listen.SerialInstruments;
import evenfall.rig.Rig;
import evenfall.serial.SerialLibrary;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** The ports that a page may listen to: those of the system, of the rig file, and those named at the start; no other path. */
final class Ports {
    private static final int SLOWEST_BAUD = 300;
    private static final int FASTEST_BAUD = 4_000_000;

    private final Optional<Rig> rig;
    private final List<String> devices;

    Ports(Optional<Rig> rig, List<String> devices) {
        this.rig = rig;
        this.devices = List.copyOf(devices);
    }

    private SortedMap<String, String> known() {
        SortedMap<String, String> known = new TreeMap<>();
        // Without its native part there is no list; a recording then says why.
        if (SerialLibrary.load() == null) {
            known.putAll(SerialLibrary.ports());
        }
        devices.forEach(device -> known.putIfAbsent(device, "named at the start"));
        rig.ifPresent(r ->
                r.ports().forEach(port -> known.putIfAbsent(port.device(), "of the rig file, " + port.name())));
        return known;
    }

    void list(ArrayNode into) {
        known().forEach((device, title) ->
                into.addObject().put("device", device).put("title", title).put("baud", usualBaud(device)));
    }

    private int usualBaud(String device) {
        return rig.flatMap(r -> r.ports().stream()
                        .filter(port -> port.device().equals(device))
                        .findFirst())
                .map(Rig.Port::baud)
                .orElse(SerialInstruments.usualBaud());
    }

    /** Reads {@code source}, {@code device} and {@code baud}. */
    Source asked(JsonNode json) throws Declined {
        switch (json.path("source").asText()) {
            case "simulated" -> {
                return new Source(Source.Kind.SIMULATED, "", 0);
            }
            case "by_hand" -> {
                return new Source(Source.Kind.BY_HAND, "", 0);
            }
            case "rig" -> {
                if (rig.isEmpty()) {
                    throw new Declined(400, "No rig file is known here; allowed: evenfall console --rig RIG.yaml.");
                }
                return new Source(Source.Kind.RIG, "", 0);
            }
            case "port" -> {
                return port(json);
            }
            default -> throw new Declined(400, "The source cannot be used; allowed: simulated, port, rig, by_hand.");
        }
    }

    private Source port(JsonNode json) throws Declined {
        String device = json.path("device").asText();
        SortedMap<String, String> known = known();
        if (!known.containsKey(device)) {
            throw new Declined(
                    400,
                    "There is no such port here; allowed: "
                            + (known.isEmpty()
                                    ? "none is plugged in. Plug in the hub, wait five seconds, and load the page again."
                                    : String.join(", ", known.keySet()) + "."));
        }
        JsonNode baud = json.path("baud");
        if (baud.isMissingNode() || baud.isNull()) {
            return new Source(Source.Kind.PORT, device, usualBaud(device));
        }
        if (!baud.isInt() || baud.asInt() < SLOWEST_BAUD || baud.asInt() > FASTEST_BAUD) {
            throw new Declined(400, "This cannot be a baud rate; allowed: 300 to 4000000 bits per second.");
        }
        return new Source(Source.Kind.PORT, device, baud.asInt());
    }

    /** The ports behind a source that is not simulated. */
    List<Rig.Port> behind(Source source) {
        return source.kind() == Source.Kind.RIG
                ? rig.map(Rig::ports).orElse(List.of())
                : List.of(new Rig.Port("port", source.device(), source.baud()));
    }
}
