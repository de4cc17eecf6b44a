package evenfall.sim.world;

import evenfall.config.ConfigException;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** The built-in level field with lines changed, for tests that need a world of their own. All values are invented. */
final class TestScenarios {
    private static final Map<String, Run> RUNS = new ConcurrentHashMap<>();

    /** All that a run gives. */
    record Run(TruthLog truth, List<Emission> emissions) {}

    private TestScenarios() {}

    /** Perfectly level ground under a boom that neither moves nor bends, with outlets that are all alike and streams as on the desk. */
    static String frozen() {
        return edit(builtIn("level-field"), "roughness: B", "roughness: level", "boom: wide-36", "boom: rigid")
                .replace(
                        "  air_C: 12\n",
                        "  air_C: 12\n  streams: ideal\n  plumbing: {outlet_spread_pct: 0, line_loss_pct: 0}\n");
    }

    static String builtIn(String name) {
        try (var in = Scenarios.class.getResourceAsStream(name + ".yaml")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Replaces each text by the next; each must be there. */
    static String edit(String text, String... pairs) {
        String edited = text;
        for (int i = 0; i < pairs.length; i += 2) {
            if (!edited.contains(pairs[i])) {
                throw new AssertionError("the scenario does not hold: " + pairs[i]);
            }
            edited = edited.replace(pairs[i], pairs[i + 1]);
        }
        return edited;
    }

    static Scenario scenario(String text) {
        try {
            return Scenarios.written("edited", text);
        } catch (ConfigException e) {
            throw new AssertionError(e.getMessage(), e);
        }
    }

    /** Runs a text; each only once, since many tests look at the same and none changes it. */
    static Run run(String text) {
        return RUNS.computeIfAbsent(text, ignored -> {
            Run run = new Run(new TruthLog(), new ArrayList<>());
            new World(scenario(text), run.truth()).run(run.emissions()::add);
            return run;
        });
    }

    /** Runs it and keeps only the truth. */
    static TruthLog truth(Scenario scenario) {
        TruthLog log = new TruthLog();
        new World(scenario, log).run(emission -> {});
        return log;
    }
}
