package evenfall.config;

import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Something a person wrote in a file or on the command line cannot be used. The message is one line: file, place, what
 * is wrong, what is allowed.
 */
public final class ConfigException extends Exception {
    private static final long serialVersionUID = 1L;
    private static final int LONGEST_PLACE = 120;

    /** Line ends of every kind, and what could move the cursor of a terminal. */
    private static final Pattern NOT_OF_ONE_LINE = Pattern.compile("\\s*[\\p{Cntrl}\\u0085\\u2028\\u2029]+\\s*");

    /**
     * @param file name of the file as the person gave it
     * @param line line in it, from 1; 0 where a line makes no sense
     * @param place the key, with dots between its parts; null where the whole file is meant
     * @param wrong what is wrong, as half a sentence
     * @param allowed what would be right
     */
    public ConfigException(String file, int line, @Nullable String place, String wrong, String allowed) {
        super(oneLine(file + (line > 0 ? ":" + line : "") + ": "
                + (place == null || place.isEmpty() ? "" : brief(place) + ": ") + wrong + "; allowed: " + allowed));
    }

    /** For input that has no file: an option on the command line. */
    public static ConfigException ofOption(String option, String wrong, String allowed) {
        return new ConfigException("option " + option, 0, null, wrong, allowed);
    }

    private static String brief(String place) {
        return place.length() > LONGEST_PLACE ? place.substring(0, LONGEST_PLACE) + "…" : place;
    }

    private static String oneLine(String text) {
        return NOT_OF_ONE_LINE.matcher(text).replaceAll(" ");
    }
}
