package evenfall.bench.score;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** How far each quantity that the monitor reports is from the truth, by its name. */
public final class Senses {
    /** Row CV, percentage points. */
    public static final String ROW_CV = "row CV, points";

    /** Rate error, percentage points. */
    public static final String RATE = "rate error, points";

    /** Rate error while true speed and flow are steady, percentage points. */
    public static final String RATE_STEADY = "rate error steady, points";

    private final Map<String, Spread> spreads = new LinkedHashMap<>();

    void compare(String quantity, @Nullable Double said, @Nullable Double truth, double times) {
        if (said != null && truth != null) {
            spread(quantity).add(times * (said - truth));
        }
    }

    private Spread spread(String quantity) {
        return spreads.computeIfAbsent(quantity, q -> new Spread());
    }

    /** Takes in all of another's. */
    public void add(Senses other) {
        other.spreads.forEach((quantity, spread) -> spread(quantity).add(spread));
    }

    /** In the order in which they came up. */
    public Map<String, Spread> spreads() {
        return spreads;
    }

    /** That of one quantity; empty where nothing could be compared. */
    public Spread of(String quantity) {
        return spreads.getOrDefault(quantity, new Spread());
    }
}
