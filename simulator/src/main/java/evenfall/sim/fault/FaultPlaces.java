package evenfall.sim.fault;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The places of one machine where faults can be, by name.
 *
 * @param outlets how many
 * @param sections names, from the left
 * @param heights names of the height sensors, from the left
 * @param ports names of the serial ports that something is sent on
 * @param fitted parts that are there and may be missing on other machines
 */
public record FaultPlaces(
        int outlets, List<String> sections, List<String> heights, List<String> ports, List<Part> fitted) {
    private static final List<String> WINGS = List.of("left", "right");
    private static final List<String> WHEELS = List.of("front-left", "front-right", "rear-left", "rear-right");

    /** Parts that every machine has. */
    private static final List<Part> ALWAYS =
            List.of(Part.OUTLETS, Part.PLUMBING, Part.RATE_CONTROL, Part.HUB, Part.CABLES, Part.BOOM, Part.CHASSIS);

    public FaultPlaces {
        sections = List.copyOf(sections);
        heights = List.copyOf(heights);
        ports = List.copyOf(ports);
        fitted = List.copyOf(fitted);
    }

    boolean has(Part part) {
        return ALWAYS.contains(part) || fitted.contains(part) || (part == Part.HEIGHT_SENSORS && !heights.isEmpty());
    }

    /** What may be said here, for complaints. */
    String allowed(PlaceKind kind) {
        return switch (kind) {
            case NOWHERE -> kind.words();
            case OUTLET -> "1 to " + outlets + ", a stretch such as 9-12, or all";
            default -> String.join(", ", names(kind));
        };
    }

    /** The places that are meant, from 0; empty where there is no such place. */
    Optional<List<Integer>> find(PlaceKind kind, String where) {
        if (kind == PlaceKind.OUTLET) {
            return outlets(where);
        }
        int at = names(kind).indexOf(where.toLowerCase(Locale.ROOT));
        return at < 0 ? Optional.empty() : Optional.of(List.of(at));
    }

    private List<String> names(PlaceKind kind) {
        return switch (kind) {
            case SECTION -> sections;
            case HEIGHT_SENSOR -> heights;
            case WING -> WINGS;
            case WHEEL -> WHEELS;
            case PORT -> ports;
            case NOWHERE, OUTLET -> List.of();
        };
    }

    private Optional<List<Integer>> outlets(String where) {
        int dash = where.indexOf('-');
        int from = where.equals("all") ? 1 : number(dash < 0 ? where : where.substring(0, dash));
        int to = where.equals("all") ? outlets : dash < 0 ? from : number(where.substring(dash + 1));
        if (from < 1 || to > outlets || to < from) {
            return Optional.empty();
        }
        List<Integer> places = new ArrayList<>();
        for (int i = from; i <= to; i++) {
            places.add(i - 1);
        }
        return Optional.of(places);
    }

    private static int number(String text) {
        return text.matches("[0-9]{1,4}") ? Integer.parseInt(text) : 0;
    }
}
