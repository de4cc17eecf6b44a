package evenfall.bench.matrix;

import evenfall.config.ConfigException;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** Scenarios that the score makes itself: one invented machine, on ground and drives as they are wanted. */
final class MadeField {
    private static final String TEXT = read();

    private final String title;
    private String seconds = "60";
    private String ground = "{roughness: B}";
    private String drive = "{start_mps: 5.0}";
    private String outlet = "five-stream";
    private final StringBuilder world = new StringBuilder();

    MadeField(String title) {
        this.title = title;
    }

    private static String read() {
        try (InputStream in = MadeField.class.getResourceAsStream("field.yaml")) {
            if (in == null) {
                throw new IllegalStateException("the program lacks its own file field.yaml");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    MadeField lasts(double howLongS) {
        seconds = number(howLongS);
        return this;
    }

    /** @param flow as in a scenario file, in braces */
    MadeField ground(String flow) {
        ground = flow;
        return this;
    }

    /** @param flow as in a scenario file, in braces */
    MadeField drive(String flow) {
        drive = flow;
        return this;
    }

    MadeField outlet(String id) {
        outlet = id;
        return this;
    }

    /** @param line a line of {@code world}, without its indent */
    MadeField world(String line) {
        world.append("  ").append(line).append('\n');
        return this;
    }

    Scenario scenario(long seed) throws ConfigException {
        String text = TEXT.replace("@title@", title)
                .replace("@seconds@", seconds)
                .replace("@ground@", ground)
                .replace("@drive@", drive)
                .replace("@world@\n", world)
                .replace("@outlet@", outlet);
        return Scenarios.written(title, text).withSeed(seed);
    }

    static String number(double value) {
        return String.format(Locale.ROOT, "%.3f", value);
    }
}
