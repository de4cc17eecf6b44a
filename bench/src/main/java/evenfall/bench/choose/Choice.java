package evenfall.bench.choose;

import evenfall.outlet.OutletDesign;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The answer: every outlet type against the job, the best first.
 *
 * <p>Types that reach the whole range come before those that do not. Among them each criterion gives a score from 0 to 1: where
 * less is better, the least over one's own; for tolerance, the share of heights at which rows keep the limit; for handling, 1 for a
 * nozzle and one half for a bar, a choice of ours. The rank follows their weighted mean. A criterion that is not known of every type
 * is left out for all.
 *
 * @param job what was asked
 * @param weights how criteria count
 * @param ranked the best first
 * @param leftOut criteria that were not known of every type
 * @param factors product and weather, the same for all
 */
public record Choice(Job job, Weights weights, List<Ranked> ranked, List<Criterion> leftOut, BurnFactors factors) {
    private static final double BAR_HANDLING = 0.5;

    /** Scores nearer to each other than this count as equal in words. */
    private static final double SAME = 0.01;

    /**
     * A type in its place.
     *
     * @param candidate the type
     * @param score weighted mean of the scores, 0 to 1; null where it does not reach the range or
     *     nothing that is weighed is known
     * @param scores by criterion, those left out not in it; empty where it does not reach the range
     * @param best criteria in which no other type does better and some does worse
     * @param worst criteria in which no other type does worse and some does better
     */
    public record Ranked(
            Candidate candidate,
            @Nullable Double score,
            Map<Criterion, Double> scores,
            List<Criterion> best,
            List<Criterion> worst) {}

    public Choice {
        ranked = List.copyOf(ranked);
        leftOut = List.copyOf(leftOut);
    }

    /**
     * @param designs outlet types, in the order in which equals shall stand
     */
    public static Choice of(Job job, List<OutletDesign> designs, Prices prices, Weights weights) {
        List<Candidate> candidates = new ArrayList<>();
        for (OutletDesign design : designs) {
            candidates.add(Candidate.of(job, design, prices));
        }
        List<Candidate> able =
                candidates.stream().filter(c -> c.cover() != null).toList();
        Map<Criterion, List<Double>> scores = new EnumMap<>(Criterion.class);
        List<Criterion> leftOut = new ArrayList<>();
        for (Criterion criterion : Criterion.values()) {
            List<Double> known = scores(criterion, able);
            if (known == null) {
                leftOut.add(criterion);
            } else {
                scores.put(criterion, known);
            }
        }
        List<Ranked> ranked = new ArrayList<>();
        for (int i = 0; i < able.size(); i++) {
            ranked.add(ranked(able.get(i), i, scores, weights));
        }
        ranked.sort(Comparator.comparingDouble(one -> one.score() == null ? 0 : -one.score()));
        candidates.stream()
                .filter(c -> c.cover() == null)
                .sorted(Comparator.comparingDouble(c -> -c.reachedShare()))
                .forEach(c -> ranked.add(new Ranked(c, null, Map.of(), List.of(), List.of())));
        return new Choice(job, weights, ranked, leftOut, BurnFactors.of(job));
    }

    private static Ranked ranked(Candidate candidate, int index, Map<Criterion, List<Double>> scores, Weights weights) {
        Map<Criterion, Double> own = new EnumMap<>(Criterion.class);
        List<Criterion> best = new ArrayList<>();
        List<Criterion> worst = new ArrayList<>();
        double sum = 0;
        double weight = 0;
        for (Map.Entry<Criterion, List<Double>> entry : scores.entrySet()) {
            double score = entry.getValue().get(index);
            double least = entry.getValue().stream().mapToDouble(v -> v).min().orElse(score);
            double most = entry.getValue().stream().mapToDouble(v -> v).max().orElse(score);
            own.put(entry.getKey(), score);
            sum += weights.of(entry.getKey()) * score;
            weight += weights.of(entry.getKey());
            if (most - least > SAME && most - score < SAME) {
                best.add(entry.getKey());
            }
            if (most - least > SAME && score - least < SAME) {
                worst.add(entry.getKey());
            }
        }
        return new Ranked(candidate, weight > 0 ? sum / weight : null, own, best, worst);
    }

    private static @Nullable List<Double> scores(Criterion criterion, List<Candidate> able) {
        List<Double> measures = new ArrayList<>();
        for (Candidate candidate : able) {
            Double measure = measure(criterion, candidate);
            if (measure == null) {
                return null;
            }
            measures.add(measure);
        }
        if (criterion == Criterion.TOLERANCE || criterion == Criterion.HANDLING) {
            return measures;
        }
        double least = measures.stream().mapToDouble(v -> v).min().orElse(0);
        return measures.stream().map(v -> v > 0 ? least / v : 1).toList();
    }

    private static @Nullable Double measure(Criterion criterion, Candidate candidate) {
        return switch (criterion) {
            case COST -> candidate.cost().amount();
            case TOLERANCE ->
                candidate.evenness() == null ? null : candidate.evenness().withinShare();
            case SETS ->
                candidate.cover() == null ? null : (double) candidate.cover().sets();
            case CONTACT ->
                candidate.contact() == null ? null : candidate.contact().wettedMpM();
            case HANDLING -> candidate.bar() ? BAR_HANDLING : 1;
        };
    }

    /** The least leaf contact among the types that have one, for showing others as multiples of it; null where none has. */
    public @Nullable Double leastContactMpM() {
        Double least = null;
        for (Ranked one : ranked) {
            LeafContact contact = one.candidate().contact();
            if (contact != null && (least == null || contact.wettedMpM() < least)) {
                least = contact.wettedMpM();
            }
        }
        return least;
    }
}
