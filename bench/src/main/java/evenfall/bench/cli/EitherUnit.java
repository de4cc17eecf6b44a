package evenfall.bench.cli;

import evenfall.bench.choose.Span;
import evenfall.config.ConfigException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A quantity that the command line takes in one of two units, named in the option; never in both, never without.
 *
 * @param metric the option in metric units
 * @param us the option in US units
 */
record EitherUnit(Given metric, Given us) {
    private static final String NUMBER = "[0-9]+(?:\\.[0-9]*)?|\\.[0-9]+";
    private static final Pattern SPAN = Pattern.compile("\\s*(" + NUMBER + ")\\s*(?:-\\s*(" + NUMBER + "))?\\s*");

    /**
     * One of the two options.
     *
     * @param option its name, the unit in it
     * @param text what was given; null where it was not
     * @param unit the unit as people write it
     * @param unitSi size of the unit in SI
     * @param low smallest number allowed, in the unit
     * @param high largest number allowed, in the unit
     */
    record Given(String option, @Nullable String text, String unit, double unitSi, double low, double high) {
        private ConfigException wrong(String wrong, String allowed) {
            return ConfigException.ofOption(option, wrong, allowed);
        }

        private double number(String digits) throws ConfigException {
            double value = Double.parseDouble(digits);
            Ranges.within(option, value, low, high, unit);
            return value;
        }
    }

    /**
     * A span in SI; a single number is both its ends.
     *
     * @return null where neither option was given
     */
    @Nullable
    Span span() throws ConfigException {
        Given given = one();
        if (given == null || given.text() == null) {
            return null;
        }
        Matcher matcher = SPAN.matcher(given.text());
        if (!matcher.matches()) {
            throw given.wrong(
                    given.text() + " cannot be used", "low-high in " + given.unit() + ", as 100-200, or one number");
        }
        double low = given.number(matcher.group(1));
        double high = matcher.group(2) == null ? low : given.number(matcher.group(2));
        if (low > high) {
            throw given.wrong(
                    given.text() + " begins above its end", "low-high in " + given.unit() + ", the lower first");
        }
        return new Span(low * given.unitSi(), high * given.unitSi());
    }

    /**
     * One number in SI.
     *
     * @return null where neither option was given
     */
    @Nullable
    Double number() throws ConfigException {
        Given given = one();
        if (given == null || given.text() == null) {
            return null;
        }
        if (!given.text().strip().matches("-?(?:" + NUMBER + ")")) {
            throw given.wrong(given.text() + " cannot be used", "a number in " + given.unit());
        }
        return given.number(given.text().strip()) * given.unitSi();
    }

    private @Nullable Given one() throws ConfigException {
        if (metric.text() != null && us.text() != null) {
            throw metric.wrong("stands beside " + us.option(), "one of the two");
        }
        return metric.text() != null ? metric : us.text() != null ? us : null;
    }
}
