package evenfall.bench.prove.record;

import evenfall.bench.prove.guide.Constant;
import evenfall.config.ConfigException;
import evenfall.rig.RigFile;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/**
 * Found constants written into a rig file: the number changes and a dated remark above its line keeps the old one; every other
 * character stays.
 */
public final class RigConstants {
    private final String name;
    private final String text;
    private final Node root;

    private RigConstants(String name, String text) {
        this.name = name;
        this.text = text;
        this.root = new Yaml(new LoaderOptions()).compose(new StringReader(text));
    }

    /**
     * Writes them into the file, after the result has been read as a rig file again.
     *
     * @param day as 2026-11-25
     * @param prover for the remark
     * @throws ConfigException when it is no rig file, or has no place for a constant; the file is as it was
     */
    public static void write(Path file, List<Constant> constants, String day, String prover)
            throws ConfigException, IOException {
        // A file that is broken already must not be touched.
        RigFile.read(file);
        String before = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
        String after = apply(file.toString(), before, constants, day, prover);
        Path folder = file.toAbsolutePath().getParent();
        RigFile.parse(file.toString(), after, folder == null ? Path.of(".") : folder);
        WholeFile.write(file, after);
    }

    /** The text with the constants in it. */
    static String apply(String name, String text, List<Constant> constants, String day, String prover)
            throws ConfigException {
        String now = text;
        for (Constant constant : constants) {
            // One after another, since each moves the places behind it.
            String next = new RigConstants(name, now).with(constant, day, prover);
            onlyTouches(name, now, next, constant);
            now = next;
        }
        return now;
    }

    /** An alias or an anchor would carry the new number to a place that nobody meant. */
    private static void onlyTouches(String name, String before, String after, Constant constant)
            throws ConfigException {
        Map<String, String> then = scalars(before);
        Map<String, String> now = scalars(after);
        String place = constant.rigPlace();
        if (place != null) {
            then.remove(place);
            if (!constant.text().equals(now.remove(place))) {
                throw notAlone(name, place);
            }
        }
        if (!then.equals(now)) {
            throw notAlone(name, place == null ? constant.beside() : place);
        }
    }

    private static ConfigException notAlone(String name, String place) {
        return new ConfigException(
                name, 0, place, "cannot be changed alone", "a number written out, without anchor or alias");
    }

    private static Map<String, String> scalars(String text) {
        Map<String, String> found = new TreeMap<>();
        enter("", new Yaml(new LoaderOptions()).compose(new StringReader(text)), found);
        return found;
    }

    private static void enter(String place, Node node, Map<String, String> found) {
        if (node instanceof ScalarNode scalar) {
            found.put(place, scalar.getValue());
        } else if (node instanceof MappingNode mapping) {
            for (NodeTuple entry : mapping.getValue()) {
                String key = entry.getKeyNode() instanceof ScalarNode scalar ? scalar.getValue() : "?";
                enter(place.isEmpty() ? key : place + "." + key, entry.getValueNode(), found);
            }
        } else if (node instanceof SequenceNode sequence) {
            int number = 1;
            for (Node entry : sequence.getValue()) {
                enter(place + "[" + number++ + "]", entry, found);
            }
        }
    }

    private record Edit(int from, int to, String text) {}

    private String with(Constant constant, String day, String prover) throws ConfigException {
        String remark = "# " + day + " prove " + prover + ": ";
        String found = constant.text() + " +- " + constant.expandedText() + " (95 %)";
        String place = constant.rigPlace();
        List<Edit> edits = new ArrayList<>();
        if (place == null) {
            Node beside = find(root, constant.beside());
            if (beside == null) {
                throw missing(constant.beside());
            }
            int at = keyIndex(constant.beside());
            edits.add(remarkAbove(
                    at,
                    remark + constant.of() + " " + constant.key() + " " + found
                            + "; this rig file names no such sensor"));
            return edited(edits);
        }
        String key = place.substring(place.lastIndexOf('.') + 1);
        Node value = find(root, place);
        if (value instanceof ScalarNode scalar) {
            edits.add(new Edit(
                    index(scalar.getStartMark().getIndex()),
                    index(scalar.getEndMark().getIndex()),
                    constant.text()));
            edits.add(remarkAbove(keyIndex(place), remark + key + " was " + scalar.getValue() + ", found " + found));
            return edited(edits);
        }
        String around = place.substring(0, place.lastIndexOf('.'));
        if (!(find(root, around) instanceof MappingNode mapping)
                || mapping.getValue().isEmpty()) {
            throw missing(around);
        }
        edits.addAll(inserted(mapping, key, constant, remark + key + " was not given, found " + found));
        return edited(edits);
    }

    private ConfigException missing(String place) {
        return new ConfigException(
                name, 0, place, "is not in this rig file, so the constant has no place", "a rig file with that sensor");
    }

    private List<Edit> inserted(MappingNode mapping, String key, Constant constant, String remark) {
        List<NodeTuple> entries = mapping.getValue();
        NodeTuple last = entries.get(entries.size() - 1);
        if (mapping.getFlowStyle() == org.yaml.snakeyaml.DumperOptions.FlowStyle.FLOW) {
            int end = index(last.getValueNode().getEndMark().getIndex());
            return List.of(
                    new Edit(end, end, ", " + key + ": " + constant.text()),
                    remarkAbove(index(last.getKeyNode().getStartMark().getIndex()), remark));
        }
        NodeTuple first = entries.get(0);
        int start = index(first.getKeyNode().getStartMark().getIndex());
        String indent = " ".repeat(first.getKeyNode().getStartMark().getColumn());
        return List.of(
                new Edit(start, start, key + ": " + constant.text() + lineEnd() + indent), remarkAbove(start, remark));
    }

    /** A remark on a line of its own above the line of a place, as far in as that line. */
    private Edit remarkAbove(int at, String remark) {
        int lineStart = text.lastIndexOf('\n', at - 1) + 1;
        int words = lineStart;
        while (words < text.length() && text.charAt(words) == ' ') {
            words++;
        }
        return new Edit(lineStart, lineStart, text.substring(lineStart, words) + remark + lineEnd());
    }

    private String lineEnd() {
        return text.contains("\r\n") ? "\r\n" : "\n";
    }

    private String edited(List<Edit> edits) {
        StringBuilder now = new StringBuilder(text);
        List<Edit> fromTheEnd = new ArrayList<>(edits);
        fromTheEnd.sort(Comparator.comparingInt(Edit::from).reversed());
        for (Edit edit : fromTheEnd) {
            now.replace(edit.from(), edit.to(), edit.text());
        }
        return now.toString();
    }

    /** Marks count code points; a text counts in chars. */
    private int index(int codePoints) {
        return text.offsetByCodePoints(0, codePoints);
    }

    private int keyIndex(String place) {
        int dot = place.lastIndexOf('.');
        Node around = dot < 0 ? root : find(root, place.substring(0, dot));
        String key = place.substring(dot + 1);
        if (around instanceof MappingNode mapping) {
            for (NodeTuple entry : mapping.getValue()) {
                if (entry.getKeyNode() instanceof ScalarNode scalar
                        && scalar.getValue().equals(key)) {
                    return index(scalar.getStartMark().getIndex());
                }
            }
        }
        throw new IllegalStateException("a place was found and its key was not: " + place);
    }

    private static @Nullable Node find(Node root, String place) {
        Node at = root;
        for (String part :
                (Iterable<String>) java.util.regex.Pattern.compile("\\.").splitAsStream(place)::iterator) {
            int bracket = part.indexOf('[');
            at = child(at, bracket < 0 ? part : part.substring(0, bracket));
            if (bracket >= 0 && at instanceof SequenceNode sequence) {
                int number = Integer.parseInt(part.substring(bracket + 1, part.length() - 1));
                at = number <= sequence.getValue().size() ? sequence.getValue().get(number - 1) : null;
            }
            if (at == null) {
                return null;
            }
        }
        return at;
    }

    private static @Nullable Node child(@Nullable Node node, String key) {
        if (node instanceof MappingNode mapping) {
            for (NodeTuple entry : mapping.getValue()) {
                if (entry.getKeyNode() instanceof ScalarNode scalar
                        && scalar.getValue().equals(key)) {
                    return entry.getValueNode();
                }
            }
        }
        return null;
    }
}
