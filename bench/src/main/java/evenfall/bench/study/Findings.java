package evenfall.bench.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.hipparchus.distribution.continuous.TDistribution;
import org.jspecify.annotations.Nullable;

/**
 * Which outlet type is the most even where. The measure is the row CV that 95 % of the pass keeps (the true row CV's 95th percentile),
 * its mean over the seeds, at the height that suits the type best.
 *
 * <p>Two types are told apart by Student's t test of the differences seed by seed, two-sided at 95 %: a seed is one stretch of ground,
 * and both drove over it. With one seed nothing can be told apart from luck.
 */
public final class Findings {
    private static final double CONFIDENCE = 0.95;

    private Findings() {}

    /**
     * A type on one ground at one speed, at its best height.
     *
     * @param heightM that height, m
     * @param cvP95 mean over the seeds, a ratio
     * @param perSeed the same for each seed of the grid; NaN where the run is missing or nothing fell
     * @param like whether it cannot be told apart from the best; null for the best itself and where there are too few seeds
     */
    public record Standing(
            String outlet,
            double heightM,
            double cvP95,
            List<Double> perSeed,
            @Nullable Boolean like) {
        public Standing {
            perSeed = List.copyOf(perSeed);
        }
    }

    /**
     * @param standings the most even first; empty where no run is there yet
     */
    public record Answer(String ground, double speedKmh, List<Standing> standings) {
        public Answer {
            standings = List.copyOf(standings);
        }
    }

    /** One answer for each ground and speed, in the grid's order. */
    public static List<Answer> of(Grid grid, Map<Case, Outcome> outcomes) {
        List<Answer> answers = new ArrayList<>();
        for (String ground : grid.grounds()) {
            for (double speed : grid.speedsKmh()) {
                List<Standing> standings = new ArrayList<>();
                for (String outlet : grid.outlets()) {
                    Standing best = null;
                    for (double height : grid.heightsM()) {
                        Standing one = at(grid, outcomes, ground, speed, outlet, height);
                        if (one != null && (best == null || one.cvP95 < best.cvP95)) {
                            best = one;
                        }
                    }
                    if (best != null) {
                        standings.add(best);
                    }
                }
                standings.sort(Comparator.comparingDouble(Standing::cvP95));
                answers.add(new Answer(ground, speed, compared(standings)));
            }
        }
        return answers;
    }

    /** A type at one height; null where there is nothing. */
    static @Nullable Standing at(
            Grid grid, Map<Case, Outcome> outcomes, String ground, double speedKmh, String outlet, double heightM) {
        List<Double> perSeed = new ArrayList<>();
        double sum = 0;
        int n = 0;
        for (long seed : grid.seeds()) {
            Outcome outcome = outcomes.get(new Case(ground, outlet, speedKmh, heightM, seed));
            Double cv = outcome == null ? null : outcome.rowCvP95();
            perSeed.add(cv == null ? Double.NaN : cv);
            if (cv != null) {
                sum += cv;
                n++;
            }
        }
        return n == 0 ? null : new Standing(outlet, heightM, sum / n, perSeed, null);
    }

    private static List<Standing> compared(List<Standing> standings) {
        List<Standing> compared = new ArrayList<>();
        for (Standing one : standings) {
            Boolean like = one.equals(standings.get(0)) ? null : isLike(standings.get(0).perSeed, one.perSeed);
            compared.add(new Standing(one.outlet, one.heightM, one.cvP95, one.perSeed, like));
        }
        return compared;
    }

    /** Whether 0 lies in the interval of the mean difference; null with fewer than two seeds in both. */
    static @Nullable Boolean isLike(List<Double> best, List<Double> other) {
        List<Double> differences = new ArrayList<>();
        double sum = 0;
        for (int i = 0; i < best.size(); i++) {
            double difference = other.get(i) - best.get(i);
            if (!Double.isNaN(difference)) {
                differences.add(difference);
                sum += difference;
            }
        }
        int n = differences.size();
        if (n < 2) {
            return null;
        }
        double mean = sum / n;
        double squares = 0;
        for (double difference : differences) {
            squares += (difference - mean) * (difference - mean);
        }
        double errorOfMean = Math.sqrt(squares / (n - 1) / n);
        double t = new TDistribution(n - 1).inverseCumulativeProbability(0.5 + 0.5 * CONFIDENCE);
        return Math.abs(mean) <= t * errorOfMean;
    }
}
