package evenfall.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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
}
