package evenfall.sim.world;

import evenfall.config.ConfigException;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** The built-in level field with lines changed, for tests that need a world of their own. All values are invented. */
final class TestScenarios {
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
            Path file = Files.createTempFile("scenario", ".yaml");
            try {
                Files.writeString(file, text);
                return Scenarios.find(file.toString());
            } finally {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (ConfigException e) {
            throw new AssertionError(e.getMessage(), e);
        }
    }

    /** Runs it and keeps only the truth. */
    static TruthLog truth(Scenario scenario) {
        TruthLog log = new TruthLog();
        new World(scenario, log).run(emission -> {});
        return log;
    }
}
