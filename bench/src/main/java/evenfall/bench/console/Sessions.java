package evenfall.bench.console;

import com.fasterxml.jackson.databind.JsonNode;
import evenfall.config.ConfigException;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** The runs that are open, a few at most: each costs a thread and two worlds. */
final class Sessions {
    /** One for each of a few pages; our choice. */
    static final int MOST = 4;

    private final Map<String, Session> byId = new LinkedHashMap<>();

    /**
     * Opens one, in the place of another where the page names it.
     *
     * @param asked {@code scenario}, and if wanted {@code seed}, {@code outlet}, {@code second} and {@code instead_of}
     */
    synchronized Session open(JsonNode asked) throws Refusal {
        Session old = byId.remove(asked.path("instead_of").asText());
        if (old != null) {
            old.close();
        }
        byId.values().removeIf(Session::isClosed);
        if (byId.size() >= MOST) {
            Session lonely = byId.values().stream()
                    .max(Comparator.comparingLong(Session::unwatchedMs))
                    .orElseThrow();
            if (lonely.unwatchedMs() == 0) {
                throw new Refusal(503, MOST + " runs are open already; close a page.");
            }
            lonely.close();
            byId.remove(lonely.id());
        }
        Session session;
        try {
            String name = asked.path("scenario").asText();
            if (!Scenarios.names().contains(name)) {
                // Paths are for the command line: a page shall not find out what lies on this machine.
                throw new Refusal(
                        400, "There is no such scenario; allowed: " + String.join(", ", Scenarios.names()) + ".");
            }
            Scenario scenario = Scenarios.find(name);
            if (asked.hasNonNull("seed")) {
                if (!asked.path("seed").canConvertToLong() || asked.path("seed").asLong() < 0) {
                    throw new Refusal(400, "This cannot be a seed; allowed: a whole number, 0 or above.");
                }
                scenario = scenario.withSeed(asked.path("seed").asLong());
            }
            session = new Session(
                    UUID.randomUUID().toString(), scenario, outlet(asked, "outlet"), outlet(asked, "second"));
        } catch (ConfigException e) {
            throw new Refusal(400, String.valueOf(e.getMessage()));
        }
        byId.put(session.id(), session);
        session.start();
        return session;
    }

    private static Optional<String> outlet(JsonNode asked, String key) throws Refusal {
        String id = asked.path(key).asText("");
        if (id.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(Session.builtInOutlet(id));
    }

    synchronized Session find(String id) throws Refusal {
        Session session = byId.get(id);
        if (session == null || session.isClosed()) {
            throw new Refusal(404, "This run is not open any longer; begin it anew.");
        }
        return session;
    }

    synchronized void closeAll() {
        byId.values().forEach(Session::close);
        byId.clear();
    }
}
