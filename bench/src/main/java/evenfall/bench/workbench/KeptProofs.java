package evenfall.bench.workbench;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.sheet.ProofSheet;
import evenfall.config.ConfigException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** The result files in one folder, written here or by the command line. */
final class KeptProofs {
    /** As they are called; no name leads out of the folder. */
    private static final Pattern NAME = Pattern.compile("prove-[A-Za-z0-9][A-Za-z0-9._-]{0,150}\\.json");

    private static final int MOST_SHOWN = 50;
    private static final long LARGEST_B = 20_000_000;
    private static final JsonMapper JSON = JsonMapper.builder().build();

    private final Path folder;

    KeptProofs(Path folder) {
        this.folder = folder;
    }

    Path folder() {
        return folder;
    }

    private record Kept(String name, String atUtc, JsonNode json) {}

    /** Newest first; {@code more} says how many older ones are not listed. */
    ObjectNode list(ObjectNode into) {
        List<Path> files = new ArrayList<>();
        try (DirectoryStream<Path> all = Files.newDirectoryStream(folder, "prove-*.json")) {
            for (Path file : all) {
                if (isResult(file)) {
                    files.add(file);
                }
            }
        } catch (IOException e) {
            return into.put("kept_trouble", "The folder " + folder + " cannot be read.");
        }
        files.sort(Comparator.comparingLong(KeptProofs::changedMs).reversed());
        List<Kept> kept = new ArrayList<>();
        for (Path file : files.subList(0, Math.min(MOST_SHOWN, files.size()))) {
            Kept one = read(file);
            if (one != null) {
                kept.add(one);
            }
        }
        kept.sort(Comparator.comparing(Kept::atUtc).reversed());
        ArrayNode array = into.putArray("kept");
        kept.forEach(one -> put(array.addObject(), one));
        return into.put("kept_more", Math.max(0, files.size() - MOST_SHOWN));
    }

    private static @Nullable Kept read(Path file) {
        try {
            JsonNode json = JSON.readTree(file.toFile());
            return json.path("prove").isTextual()
                    ? new Kept(
                            String.valueOf(file.getFileName()),
                            json.path("at_utc").asText(),
                            json)
                    : null;
        } catch (IOException e) {
            // Half a file or somebody else's: it is not a result.
            return null;
        }
    }

    private static void put(ObjectNode node, Kept kept) {
        node.put("name", kept.name());
        node.put("at_utc", kept.atUtc());
        for (String key : List.of("prove", "rig", "simulated", "passed")) {
            node.set(key, kept.json().get(key));
        }
        ArrayNode constants = node.putArray("constants");
        for (JsonNode constant : kept.json().path("constants")) {
            ObjectNode one = constants.addObject();
            one.set("of", constant.get("of"));
            for (Map.Entry<String, JsonNode> field : constant.properties()) {
                String key = field.getKey();
                if (constant.has("expanded_uncertainty_" + key)) {
                    one.put("key", key);
                    one.set("value", field.getValue());
                    one.set("expanded", constant.get("expanded_uncertainty_" + key));
                }
            }
        }
    }

    private static long changedMs(Path file) {
        try {
            return Files.getLastModifiedTime(file).toMillis();
        } catch (IOException e) {
            return 0;
        }
    }

    private static boolean isResult(Path file) {
        try {
            return NAME.matcher(file.getFileName().toString()).matches()
                    && Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
                    && Files.size(file) <= LARGEST_B;
        } catch (IOException e) {
            return false;
        }
    }

    private Path find(String name) throws Declined {
        Path file = folder.resolve(NAME.matcher(name).matches() ? name : "none");
        if (!isResult(file)) {
            throw new Declined(404, "There is no such result here.");
        }
        return file;
    }

    Answer json(String name) throws Declined {
        try {
            return new Answer(200, "application/json", Files.readString(find(name), StandardCharsets.UTF_8), "");
        } catch (IOException e) {
            throw new Declined(404, "This result cannot be read any longer.");
        }
    }

    Answer page(String name) throws Declined {
        try {
            return Answer.html(ProofSheet.read(find(name)).html());
        } catch (ConfigException e) {
            throw new Declined(404, e.getMessage() + ".");
        }
    }
}
