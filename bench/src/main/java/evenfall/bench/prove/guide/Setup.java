package evenfall.bench.prove.guide;

import evenfall.quantity.Units;
import evenfall.rig.Rig;
import java.util.Map;
import java.util.Optional;

/**
 * What is known before the first question.
 *
 * @param rig the machine as its installer describes it, if there is a file
 * @param units of people
 * @param limits limits set by hand, by name
 */
public record Setup(Optional<Rig> rig, Units units, Map<String, Double> limits) {
    public Setup {
        limits = Map.copyOf(limits);
    }
}
