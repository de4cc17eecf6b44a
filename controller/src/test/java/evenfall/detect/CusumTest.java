package evenfall.detect;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class CusumTest {
    private static double[] sums(double[] x, double sign, double reference) {
        Cusum cusum = new Cusum();
        double[] sums = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            sums[i] = cusum.take(sign * x[i], sign * reference);
        }
        return sums;
    }

    /**
     * The sixth sum is by the printed formula, 2.0 + 98.5 − 100; our copy of the table shows 0 there.
     *
     * <p>Example 16-6, table 16-8, p. 636, of a textbook of engineering statistics of 2002: target 99, K = 1, H = 10, no signal.
     */
    @Test
    void givesTheSumsPrintedForATargetThatIsHeld() {
        double[] x = {
            102.0, 94.8, 98.3, 98.4, 102.0, 98.5, 99.0, 97.7, 100.0, 98.1, 101.3, 98.7, 101.1, 98.4, 97.0, 96.7, 100.3,
            101.4, 97.2, 101.0
        };

        assertThat(sums(x, 1, 100))
                .containsExactly(
                        new double[] {2, 0, 0, 0, 2, 0.5, 0, 0, 0, 0, 1.3, 0, 1.1, 0, 0, 0, 0.3, 1.7, 0, 1.0},
                        within(1e-9));
        assertThat(sums(x, -1, 98))
                .containsExactly(
                        new double[] {0, 3.2, 2.9, 2.5, 0, 0, 0, 0.3, 0, 0, 0, 0, 0, 0, 1.0, 2.3, 0, 0, 0.8, 0},
                        within(1e-9));
    }

    /**
     * The data known as Montgomery's (page 428 of his book on statistical quality control, as a library's manual cites it): target 10,
     * standard deviation 1, K = 0.5, H = 5. The sum of 5.28 at period 29, seven periods after its last zero, is from memory of the book.
     */
    @Test
    void signalsWhereTheTextbookDoes() {
        double[] x = {
            9.45, 7.99, 9.29, 11.66, 12.16, 10.18, 8.04, 11.46, 9.20, 10.34, 9.03, 11.47, 10.51, 9.40, 10.08, 9.37,
            10.62, 10.31, 8.52, 10.84, 10.90, 9.33, 12.29, 11.50, 10.60, 11.08, 10.38, 11.62, 11.31, 10.52
        };
        double[] up = sums(x, 1, 10.5);
        double[] down = sums(x, -1, 9.5);

        assertThat(new double[] {up[3], up[4], up[5], up[6], up[7]})
                .containsExactly(new double[] {1.16, 2.82, 2.50, 0.04, 1.00}, within(1e-9));
        assertThat(new double[] {down[0], down[1], down[2], down[6]})
                .containsExactly(new double[] {0.05, 1.56, 1.77, 1.46}, within(1e-9));
        assertThat(up[28]).isCloseTo(5.28, within(1e-9));
        assertThat(up[27]).isLessThan(5);
        Cusum cusum = new Cusum();
        for (int i = 0; i < 29; i++) {
            cusum.take(x[i], 10.5);
        }
        assertThat(cusum.looks()).isEqualTo(7);
    }

    /** NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.3: target 325, k = 0.3175, h = 4.1959; the group means are from memory. */
    @Test
    void signalsWhereTheHandbookDoes() {
        double[] x = {
            324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600, 324.625, 325.150,
            328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350
        };
        double[] up = sums(x, 1, 325.3175);
        double[] down = sums(x, -1, 324.6825);

        assertThat(up)
                .containsExactly(
                        new double[] {
                            0, 0, 0, 0, 0.03, 0, 0, 0, 0, 0, 0, 0, 3.01, 4.94, 7.45, 10.63, 11.99, 14.44, 16.00, 19.04
                        },
                        within(0.006));
        assertThat(up[12]).isLessThan(4.1959);
        assertThat(up[13]).isGreaterThan(4.1959);
        assertThat(down)
                .containsExactly(
                        new double[] {0, 0.01, 0, 0.33, 0, 0, 0.56, 0.72, 0.17, 0.25, 0.31, 0, 0, 0, 0, 0, 0, 0, 0, 0},
                        within(0.006));
    }

    /** Page's own form: the walk less its least value so far. */
    @Test
    void isTheWalkAboveItsLowestPoint() {
        for (int seed = 0; seed < 50; seed++) {
            Random random = new Random(seed);
            Cusum cusum = new Cusum();
            double walk = 0;
            double least = 0;
            for (int i = 0; i < 200; i++) {
                double x = random.nextGaussian();
                walk += x - 0.3;
                least = Math.min(least, walk);
                assertThat(cusum.take(x, 0.3)).as("seed %d, look %d", seed, i).isCloseTo(walk - least, within(1e-9));
            }
        }
    }
}
