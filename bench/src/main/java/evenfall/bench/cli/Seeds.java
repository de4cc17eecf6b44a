package evenfall.bench.cli;

import evenfall.config.ConfigException;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.LongStream;

/** Seeds given as an option. Those that alerts are tuned on and those that are quoted are never the same. */
final class Seeds {
    private static final List<Long> TUNING = range(1, 5);
    private static final List<Long> SCORING = range(101, 105);
    private static final int MOST = 1000;
    private static final Pattern RANGE = Pattern.compile("(?<from>[0-9]{1,9})(-(?<to>[0-9]{1,9}))?");

    private Seeds() {}

    /**
     * @param text {@code tuning}, {@code scoring}, one number, or two with a hyphen between
     */
    static List<Long> of(String text) throws ConfigException {
        if (text.equals("tuning")) {
            return TUNING;
        }
        if (text.equals("scoring")) {
            return SCORING;
        }
        Matcher parts = RANGE.matcher(text);
        if (parts.matches()) {
            long from = Long.parseLong(parts.group("from"));
            long to = parts.group("to") == null ? from : Long.parseLong(parts.group("to"));
            if (from <= to && to - from < MOST) {
                return range(from, to);
            }
        }
        throw ConfigException.ofOption(
                "--seeds",
                text + " cannot be used",
                "tuning, scoring, or A-B with A not above B, at most 1000 of them");
    }

    private static List<Long> range(long from, long to) {
        return LongStream.rangeClosed(from, to).boxed().toList();
    }
}
