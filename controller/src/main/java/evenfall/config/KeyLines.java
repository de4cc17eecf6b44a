package evenfall.config;

import java.io.StringReader;
import java.util.HashMap;
import java.util.Map;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** On which line of a YAML text each key stands. Places are written as complaints write them: {@code ports[1].baud}. */
final class KeyLines {
    private final Map<String, Integer> lineOfPlace = new HashMap<>();

    private KeyLines() {}

    /**
     * Looks a text through.
     *
     * @param text YAML that has been parsed without complaint
     */
    static KeyLines of(String text) {
        KeyLines lines = new KeyLines();
        Node root = new Yaml(new LoaderOptions()).compose(new StringReader(text));
        lines.enter("", root);
        return lines;
    }

    /** The line of a place, from 1; of the nearest place around it where it stands nowhere itself; 1 at last. */
    int lineOf(String place) {
        String at = place;
        while (!at.isEmpty()) {
            Integer line = lineOfPlace.get(at);
            if (line != null) {
                return line;
            }
            at = at.substring(0, Math.max(0, Math.max(at.lastIndexOf('.'), at.lastIndexOf('['))));
        }
        return 1;
    }

    private void enter(String place, Node node) {
        if (node instanceof MappingNode mapping) {
            for (NodeTuple entry : mapping.getValue()) {
                if (entry.getKeyNode() instanceof ScalarNode key) {
                    String inner = place.isEmpty() ? key.getValue() : place + "." + key.getValue();
                    lineOfPlace.put(inner, key.getStartMark().getLine() + 1);
                    enter(inner, entry.getValueNode());
                }
            }
        } else if (node instanceof SequenceNode sequence) {
            int number = 1;
            for (Node entry : sequence.getValue()) {
                String inner = place + "[" + number++ + "]";
                lineOfPlace.put(inner, entry.getStartMark().getLine() + 1);
                enter(inner, entry);
            }
        }
    }
}
