package evenfall.bench.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class FindingsTest {
    private static final Grid GRID = new Grid(
            List.of("C"),
            List.of("one", "two"),
            List.of(8.0, 12.0),
            List.of(0.4, 0.6),
            List.of(1L, 2L, 3L, 4L, 5L),
            60,
            160);

    private static Outcome cv(double p95) {
        return new Outcome(p95 / 2, p95, 0.0, 0.0, 0.0, 0.0, 0, 0, 0);
    }

    /**
     * By hand: differences 1, 2, 3, 4, 5 have mean 3, standard error 0.7071; t for 4 degrees of freedom at 95 % is 2.776 (table of
     * Student's distribution, NIST/SEMATECH e-Handbook 1.3.6.7.2), so the interval is 3 ± 1.963. Shifted down by 1.96 it holds 0 no
     * longer by a hair; by 1.04 it does.
     */
    @Test
    void typesAreToldApartByStudentsTest() {
        List<Double> best = List.of(0.0, 0.0, 0.0, 0.0, 0.0);
        assertThat(Findings.isLike(best, shifted(-1.03))).isFalse();
        assertThat(Findings.isLike(best, shifted(-1.04))).isTrue();
        assertThat(Findings.isLike(List.of(1.0), List.of(2.0))).isNull();
        assertThat(Findings.isLike(List.of(1.0, Double.NaN), List.of(2.0, 3.0))).isNull();
    }

    private static List<Double> shifted(double by) {
        return List.of(1 + by, 2 + by, 3 + by, 4 + by, 5 + by);
    }

    /** Of two types that are the same but for luck, one in twenty is told apart, as the level says. */
    @Test
    void likeTypesAreToldApartAsOftenAsTheLevelSays() {
        SplittableRandom random = new SplittableRandom(5);
        int apart = 0;
        int trials = 4000;
        for (int i = 0; i < trials; i++) {
            List<Double> one = new ArrayList<>();
            List<Double> other = new ArrayList<>();
            for (int seed = 0; seed < 5; seed++) {
                double ground = 5 * random.nextGaussian();
                one.add(ground + random.nextGaussian());
                other.add(ground + random.nextGaussian());
            }
            apart += Boolean.FALSE.equals(Findings.isLike(one, other)) ? 1 : 0;
        }
        // Four standard deviations of a binomial share about 5 %.
        assertThat((double) apart / trials).isCloseTo(0.05, within(0.014));
    }

    @Test
    void eachTypeStandsAtItsBestHeightAndTheMostEvenFirst() {
        Map<Case, Outcome> outcomes = new HashMap<>();
        for (Case one : GRID.cases()) {
            double p95 =
                    (one.outlet().equals("one") ? 0.20 : 0.10) + (one.heightM() == 0.4 ? 0.05 : 0) + 0.001 * one.seed();
            outcomes.put(one, cv(p95));
        }
        List<Findings.Answer> answers = Findings.of(GRID, outcomes);
        assertThat(answers).hasSize(2);
        for (Findings.Answer answer : answers) {
            assertThat(answer.standings().get(0).outlet()).isEqualTo("two");
            assertThat(answer.standings().get(0).heightM()).isEqualTo(0.6);
            assertThat(answer.standings().get(0).cvP95()).isCloseTo(0.103, within(1e-12));
            assertThat(answer.standings().get(1).like()).isFalse();
        }
    }

    @Test
    void whatIsNotThereIsNotKnown() {
        assertThat(Findings.of(GRID, Map.of()).get(0).standings()).isEmpty();
        String html = new StudySheet(GRID, Map.of(), evenfall.quantity.Units.US).html();
        assertThat(html).contains("not known yet", "0 of 40 runs are there").doesNotContain("NaN");
    }
}
