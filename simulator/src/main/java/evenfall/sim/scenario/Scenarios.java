package evenfall.sim.scenario;

import evenfall.config.ConfigException;
import evenfall.config.ConfigFile;
import evenfall.config.FileCheck;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The built-in scenarios, and the way to one's own. */
public final class Scenarios {
    private static final List<String> BUILT_IN = List.of(
            "level-field",
            "terrace-crossing",
            "knolls-at-speed",
            "blocked-outlets",
            "plugged-strainer",
            "weak-pump",
            "hunting-valve",
            "wrong-meter-factor",
            "tank-tells",
            "foam-on-a-sensor",
            "wheat-in-ear",
            "along-the-wood",
            "wet-hub",
            "bad-gauge",
            "stuck-wing",
            "soft-tyre",
            "headland-turns",
            "washouts",
            "clean-hour");

    private Scenarios() {}

    /** Names of the built-in scenarios. */
    public static List<String> names() {
        return BUILT_IN;
    }

    /**
     * @param nameOrPath name of a built-in scenario, or the path of a scenario file
     * @throws ConfigException when there is no such scenario or the file is wrong
     */
    public static Scenario find(String nameOrPath) throws ConfigException {
        if (BUILT_IN.contains(nameOrPath)) {
            return builtIn(nameOrPath);
        }
        Path file = Path.of(nameOrPath);
        if (!Files.isRegularFile(file)) {
            throw new ConfigException(
                    nameOrPath.isBlank() ? "SCENARIO" : nameOrPath,
                    0,
                    null,
                    nameOrPath.isBlank()
                            ? "an empty name cannot be used"
                            : Files.isDirectory(file) ? "is a folder" : "there is no such scenario",
                    String.join(", ", BUILT_IN) + ", or the path of a scenario file");
        }
        try {
            if (Files.size(file) > ConfigFile.LARGEST_BYTES) {
                throw new ConfigException(
                        nameOrPath, 0, null, "is larger than 1 MB", "at most " + ConfigFile.LARGEST_BYTES + " bytes");
            }
            String text = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
            Path folder = file.toAbsolutePath().getParent();
            return Scenario.parse(
                    String.valueOf(file.getFileName()), nameOrPath, text, folder == null ? Path.of("") : folder);
        } catch (IOException e) {
            throw new ConfigException(
                    nameOrPath, 0, null, "cannot be read (" + FileCheck.reason(e) + ")", "a readable scenario file");
        }
    }

    /**
     * A scenario that a program has written.
     *
     * @param name what people call it; also its name in complaints
     * @param text as in a scenario file; paths in it start from the working directory
     * @throws ConfigException when the text is wrong
     */
    public static Scenario written(String name, String text) throws ConfigException {
        return Scenario.parse(name, name, text, Path.of(""));
    }

    private static Scenario builtIn(String name) throws ConfigException {
        String resource = name + ".yaml";
        try (InputStream in = Scenarios.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks its own file " + resource);
            }
            return Scenario.parse(name, resource, new String(in.readAllBytes(), StandardCharsets.UTF_8), Path.of(""));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
