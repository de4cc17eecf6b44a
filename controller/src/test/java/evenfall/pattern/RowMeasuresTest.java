package evenfall.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class RowMeasuresTest {
    private static RowMeasures of(double... amounts) {
        return RowMeasures.of(amounts, 0, amounts.length);
    }

    @Test
    void theDeviationDividesByOneLessThanTheCount() {
        // By hand: mean 100, sum of squares 50, so 3.1623 % with n - 1 and 2.8868 % with n.
        assertThat(of(98, 104, 101, 95, 102, 100).rowCv()).isCloseTo(0.031623, within(1e-6));
    }

    @Test
    void cancellationDoesNotSpoilIt() {
        // NIST StRD NumAcc1: mean 10000002, standard deviation 1 exactly (as in GSL's statistics/test_nist.c).
        assertThat(of(10000001, 10000003, 10000002).rowCv()).isCloseTo(1 / 10000002.0, within(1e-15));
        // NumAcc4: 1001 values 10000000.2 and then .1 and .3 by turns: standard deviation 0.1.
        assertThat(of(numAcc(10000000.2)).rowCv() * 10000000.2).isCloseTo(0.1, within(1e-8));
        // NumAcc2: the same around 1.2: 8.3333 %.
        assertThat(of(numAcc(1.2)).rowCv()).isCloseTo(0.1 / 1.2, within(1e-14));
    }

    private static double[] numAcc(double middle) {
        double[] values = new double[1001];
        values[0] = middle;
        for (int i = 1; i < values.length; i++) {
            values[i] = middle + (i % 2 == 1 ? -0.1 : 0.1);
        }
        return values;
    }

    @Test
    void extremesAndSharesAreRelativeToTheMean() {
        RowMeasures measures = of(0.5, 0.9, 1.0, 1.1, 1.5);

        assertThat(measures.leastRow()).isCloseTo(0.5, within(1e-12));
        assertThat(measures.mostRow()).isCloseTo(1.5, within(1e-12));
        assertThat(measures.below80Share()).isEqualTo(0.2);
        assertThat(measures.above120Share()).isEqualTo(0.2);
    }

    @Test
    void whereNothingFellThereIsNoMeasure() {
        assertThat(of(0, 0, 0)).isNull();
        assertThat(of(1)).isNull();
        assertThat(of()).isNull();
    }

    /** Against the mean of what drawing the errors gives, from errors small beside the pattern to ten times as large as it. */
    @Test
    void rowsThatAreUnsureTogetherAreExpectedToBeAsUnevenAsDrawingThemGives() {
        Random random = new Random(11);
        int n = 240;
        int together = 48;
        for (double pattern : new double[] {0.1, 0.05, 0.01}) {
            double[] amounts = new double[n];
            double[] unsure = new double[n];
            for (int j = 0; j < n; j++) {
                // By turns, so that the mean stays.
                amounts[j] = 3 * (1 + pattern * random.nextGaussian());
                unsure[j] = (j % 2 == 0 ? 0.2 : -0.2) * (1 + (j / 2) % 3) / 2;
            }
            double mean = 0;
            double square = 0;
            int draws = 20_000;
            for (int draw = 0; draw < draws; draw++) {
                double[] drawn = new double[n];
                for (int from = 0; from < n; from += together) {
                    double e = random.nextGaussian();
                    for (int j = from; j < from + together; j++) {
                        drawn[j] = amounts[j] + e * unsure[j];
                    }
                }
                double cv = of(drawn).rowCv();
                mean += cv / draws;
                square += cv * cv / draws;
            }

            double said =
                    of(amounts).withUnsure(amounts, unsure, 0, n, together).rowCv();

            assertThat(said).as("pattern %s", pattern).isCloseTo(mean, within(0.015 * mean));
            assertThat(said).isLessThan(Math.sqrt(square));
        }
    }

    @Test
    void rowsThatAreSureAreAsUnevenAsTheyAre() {
        double[] amounts = {98, 104, 101, 95, 102, 100};

        assertThat(of(amounts).withUnsure(amounts, new double[6], 0, 6, 3)).isEqualTo(of(amounts));
        double[] even = {1, 1, 1};
        assertThat(of(even).withUnsure(even, new double[3], 0, 3, 3)).isEqualTo(of(even));
    }
}
