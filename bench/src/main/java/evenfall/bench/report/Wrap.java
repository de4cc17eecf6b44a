package evenfall.bench.report;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Sentences on lines that fit. */
public final class Wrap {
    private static final Pattern BLANK = Pattern.compile(" ");

    private Wrap() {}

    /** Words on lines of at most so many characters; a word that is longer has a line of its own. */
    public static List<String> lines(String text, int columns) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : (Iterable<String>) BLANK.splitAsStream(text)::iterator) {
            if (line.length() > 0 && line.length() + 1 + word.length() > columns) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() == 0 ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }
}
