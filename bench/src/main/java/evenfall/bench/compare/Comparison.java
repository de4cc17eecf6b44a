package evenfall.bench.compare;

import evenfall.bench.run.RunResult;
import java.util.List;

/**
 * Results of one scenario and seed, one for each outlet type in the order asked for.
 *
 * @param results at least one
 */
public record Comparison(List<RunResult> results) {
    public Comparison {
        results = List.copyOf(results);
        if (results.isEmpty()) {
            throw new IllegalArgumentException("nothing to compare");
        }
    }
}
