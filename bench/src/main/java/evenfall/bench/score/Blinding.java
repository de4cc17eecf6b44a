package evenfall.bench.score;

import evenfall.sim.fault.ScriptedFault;
import evenfall.sim.scenario.FittedSpec;
import evenfall.sim.scenario.Scenario;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * What nobody can be asked for while a scripted fault stands: a height by a sensor that is out of order, or which rows a blocked outlet
 * starves, since no sensor knows one outlet from another.
 */
final class Blinding {
    private static final Set<String> RATES =
            Set.of("rate-high", "rate-low", "travel-without-flow", "flow-without-travel");
    private static final Set<String> BANDS = Set.of(Watched.GAPPED, Watched.DOUBLED);
    private static final Set<String> WINGS = Set.of("wing-low", "wing-high", AlertScorer.STRIKE);

    /** These leave enough to judge by. */
    private static final Set<String> HARMLESS =
            Set.of("cable-noise", "sentences-dropped", "gnss-late", "air-thermometer-warm");

    private final List<Blind> blinds;

    /**
     * @param hides whether a kind at a place rests on what is out of order
     */
    record Blind(double fromS, double toS, Hides hides) {}

    /** What a fault hides. */
    @FunctionalInterface
    interface Hides {
        boolean hides(String kind, String place);
    }

    Blinding(List<Blind> blinds) {
        this.blinds = List.copyOf(blinds);
    }

    static Blinding of(Scenario scenario) {
        List<Blind> blinds = new ArrayList<>();
        for (ScriptedFault f : scenario.world().faults()) {
            double toS = f.forS().isPresent() ? f.atS() + f.forS().getAsDouble() : Double.POSITIVE_INFINITY;
            blinds.add(new Blind(
                    f.atS(),
                    toS + ScoringRules.LATE_S,
                    hides(f, scenario.world().fitted())));
        }
        return new Blinding(blinds);
    }

    private static Hides hides(ScriptedFault scripted, FittedSpec fitted) {
        if (HARMLESS.contains(scripted.fault().id())) {
            return (kind, place) -> false;
        }
        if (scripted.fault().id().equals("air-in-line")) {
            // The meter turns for air as for liquid.
            return (kind, place) -> RATES.contains(kind);
        }
        if (scripted.fault().id().equals("line-leaking")) {
            // What passes the meter is not what leaves the outlets, and which of both falls short is seen by nothing
            // behind the meter.
            return (kind, place) -> BANDS.contains(kind) || RATES.contains(kind);
        }
        return switch (scripted.fault().part()) {
            case HEIGHT_SENSORS ->
                (kind, place) -> BANDS.contains(kind) || (WINGS.contains(kind) && rests(scripted, fitted, place));
            case FLOW_METER -> (kind, place) -> RATES.contains(kind);
            case PRESSURE -> (kind, place) -> !RATES.contains(kind) && !kind.equals(AlertScorer.STRIKE);
            case SWITCHES -> (kind, place) -> RATES.contains(kind) || BANDS.contains(kind);
            // Rows and pressure are judged at walking pace and faster, holds go by metres.
            case GNSS, HUB, CABLES -> (kind, place) -> true;
            case OUTLETS, PLUMBING -> (kind, place) -> BANDS.contains(kind);
            case AIR, RATE_CONTROL, WHEEL, BOOM, CHASSIS -> (kind, place) -> false;
        };
    }

    /** Whether a wing's height rests on the sensor: one on its own side, or in the middle, or all of them. */
    private static boolean rests(ScriptedFault scripted, FittedSpec fitted, String place) {
        if (scripted.where().isEmpty()) {
            return true;
        }
        int side = place.equals("left") ? -1 : 1;
        return scripted.places().stream()
                .anyMatch(i -> side * fitted.heights().get(i).rightM() >= 0);
    }

    /** Whether something that it rests on was out of order at some moment of a time. */
    boolean covers(List<String> kinds, String place, double fromS, double toS) {
        for (Blind blind : blinds) {
            if (blind.fromS() <= toS
                    && blind.toS() >= fromS
                    && kinds.stream().anyMatch(kind -> blind.hides().hides(kind, place))) {
                return true;
            }
        }
        return false;
    }
}
