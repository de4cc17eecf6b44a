package evenfall.outlet;

import evenfall.config.ConfigException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The built-in outlet types, and the way to one's own. */
public final class OutletCatalogue {
    private static final List<String> BUILT_IN =
            List.of("three-stream", "five-stream", "six-stream", "seven-stream", "streamer-bar");

    private OutletCatalogue() {}

    /** Ids of the built-in types, least forgiving first. */
    public static List<String> ids() {
        return BUILT_IN;
    }

    /**
     * @param idOrFile id of a built-in type, or the path of an outlet file (anything with a dot or a slash in it)
     * @param near folder that a relative path starts from
     * @throws ConfigException when there is no such type or the file is wrong
     */
    public static OutletDesign find(String idOrFile, Path near) throws ConfigException {
        if (BUILT_IN.contains(idOrFile)) {
            return builtIn(idOrFile);
        }
        Path file = near.resolve(idOrFile);
        if (idOrFile.contains(".") || idOrFile.contains("/") || Files.isRegularFile(file)) {
            return OutletDesign.read(file);
        }
        throw ConfigException.ofOption(
                "--outlet",
                idOrFile.isBlank() ? "an empty text cannot be used" : "there is no outlet type " + idOrFile,
                String.join(", ", BUILT_IN) + ", or an outlet file");
    }

    /** A type that is known to be built in. */
    public static OutletDesign builtIn(String id) {
        String resource = id + ".yaml";
        try (InputStream in = OutletCatalogue.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalArgumentException("not a built-in outlet type: " + id);
            }
            return OutletDesign.parse(resource, new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (ConfigException e) {
            throw new IllegalStateException("the program's own outlet file is wrong: " + e.getMessage(), e);
        }
    }
}
