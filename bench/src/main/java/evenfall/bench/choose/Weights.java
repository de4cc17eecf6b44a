package evenfall.bench.choose;

import evenfall.config.ConfigException;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.stream.Collectors;

/** How much each criterion counts; 1 each unless the user says otherwise. */
public final class Weights {
    private static final String OPTION = "--weigh";
    private static final double LARGEST = 1000;
    private static final String ALLOWED = "pairs as cost=2,tolerance=1 of "
            + Arrays.stream(Criterion.values()).map(Criterion::word).collect(Collectors.joining(", "))
            + ", each once, from 0 to 1000, at least one above 0";

    private final Map<Criterion, Double> weights = new EnumMap<>(Criterion.class);

    private Weights() {
        for (Criterion criterion : Criterion.values()) {
            weights.put(criterion, 1.0);
        }
    }

    public static Weights equal() {
        return new Weights();
    }

    /**
     * @param text as {@code cost=2,tolerance=1}; what is not named keeps the weight 1
     * @throws ConfigException as the option {@code --weigh}
     */
    public static Weights parse(String text) throws ConfigException {
        Weights given = new Weights();
        Map<Criterion, Double> seen = new EnumMap<>(Criterion.class);
        for (String pair : text.split(",", -1)) {
            int equals = pair.indexOf('=');
            String word = pair.substring(0, Math.max(0, equals)).strip();
            Criterion criterion = Arrays.stream(Criterion.values())
                    .filter(c -> c.word().equals(word))
                    .findFirst()
                    .orElseThrow(() -> ConfigException.ofOption(OPTION, pair.strip() + " cannot be used", ALLOWED));
            if (seen.put(criterion, weight(pair, pair.substring(equals + 1).strip())) != null) {
                throw ConfigException.ofOption(OPTION, word + " is given twice", ALLOWED);
            }
        }
        given.weights.putAll(seen);
        if (given.weights.values().stream().noneMatch(weight -> weight > 0)) {
            throw ConfigException.ofOption(OPTION, "no weight is above 0", ALLOWED);
        }
        return given;
    }

    private static double weight(String pair, String number) throws ConfigException {
        try {
            double weight = Double.parseDouble(number);
            if (weight >= 0 && weight <= LARGEST) {
                return weight;
            }
        } catch (NumberFormatException e) {
            throw ConfigException.ofOption(OPTION, pair.strip() + " cannot be used", ALLOWED);
        }
        throw ConfigException.ofOption(OPTION, pair.strip() + " cannot be used", ALLOWED);
    }

    public double of(Criterion criterion) {
        return weights.getOrDefault(criterion, 1.0);
    }
}
