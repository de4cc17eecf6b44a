package evenfall.wire;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/** The table that decoder and encoders are held to, {@code docs/golden-sentences.tsv}. */
final class GoldenTable {

    record Row(int line, String sentence, String kind, SortedMap<String, String> fields) {
        /** The kind without the mark that no encoder prints it so. */
        String decodedKind() {
            return kind.startsWith("decode:") ? kind.substring("decode:".length()) : kind;
        }

        boolean isDecoded() {
            return !kind.equals("ignored") && !kind.startsWith("reject:");
        }
    }

    private GoldenTable() {}

    static List<Row> rows() {
        List<String> lines;
        try {
            lines = Files.readAllLines(Path.of("docs", "golden-sentences.tsv"), StandardCharsets.US_ASCII);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            if (line.startsWith("#")) {
                continue;
            }
            String[] columns = line.split("\t", -1);
            if (columns.length != 3) {
                throw new AssertionError("golden-sentences.tsv:" + (i + 1) + ": three columns expected");
            }
            rows.add(new Row(i + 1, columns[0], columns[1], fields(columns[2])));
        }
        return rows;
    }

    private static SortedMap<String, String> fields(String text) {
        TreeMap<String, String> fields = new TreeMap<>();
        for (String pair : text.split(";")) {
            if (!pair.isEmpty()) {
                int equals = pair.indexOf('=');
                fields.put(pair.substring(0, equals), pair.substring(equals + 1));
            }
        }
        return fields;
    }
}
