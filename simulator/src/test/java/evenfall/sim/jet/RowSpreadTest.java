package evenfall.sim.jet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.sim.chance.Chance;
import org.junit.jupiter.api.Test;

class RowSpreadTest {
    private static final long SEED = 7;

    private final double[] shares = new double[RowSpread.MOST_ROWS];

    @Test
    void withoutSpreadALineFeedsItsTwoNeighboursByNearness() {
        assertThat(RowSpread.firstRow(3.25, 0)).isEqualTo(3);
        assertThat(RowSpread.shares(3.25, 0, shares)).isEqualTo(2);
        assertThat(shares[0]).isEqualTo(0.75);
        assertThat(shares[1]).isEqualTo(0.25);
        assertThat(RowSpread.firstRow(-1.0, 0)).isEqualTo(-1);
        assertThat(RowSpread.shares(-1.0, 0, shares)).isEqualTo(2);
        assertThat(shares[0]).isEqualTo(1);
    }

    @Test
    void aBandOnARowFeedsBothNeighboursAlike() {
        // Half a row to either side: the hat averaged over it leaves 3/4, and 1/8 for each neighbour.
        double sigma = 0.5 / Math.sqrt(3);
        int first = RowSpread.firstRow(4, sigma);
        int n = RowSpread.shares(4, sigma, shares);
        assertThat(first + n - 1).isGreaterThanOrEqualTo(5);
        assertThat(shares[3 - first]).isCloseTo(0.125, within(1e-15));
        assertThat(shares[4 - first]).isCloseTo(0.75, within(1e-15));
        assertThat(shares[5 - first]).isCloseTo(0.125, within(1e-15));
    }

    @Test
    void nothingIsLostAndTheMiddleStaysWhereItIs() {
        Chance chance = Chance.stream(SEED, "shares");
        for (int c = 0; c < 20_000; c++) {
            double at = 200 * (chance.nextDouble() - 0.5);
            double sigma = c % 3 == 0 ? 5 * chance.nextDouble() : 0.5 * chance.nextDouble();
            if (c % 7 == 0) {
                sigma = 1e-9 * chance.nextDouble();
            }
            int first = RowSpread.firstRow(at, sigma);
            int n = RowSpread.shares(at, sigma, shares);
            double sum = 0;
            double middle = 0;
            for (int j = 0; j < n; j++) {
                assertThat(shares[j]).as("seed %d, case %d", SEED, c).isBetween(-1e-12, 1.0);
                sum += shares[j];
                middle += shares[j] * (first + j);
            }
            assertThat(sum).as("seed %d, case %d", SEED, c).isCloseTo(1, within(1e-12));
            assertThat(middle).as("seed %d, case %d", SEED, c).isCloseTo(at, within(1e-10));
        }
    }

    /** The same by adding up many thin lines over the band. */
    @Test
    void aBandIsTheSumOfItsLines() {
        Chance chance = Chance.stream(SEED, "lines");
        double[] thin = new double[RowSpread.MOST_ROWS];
        for (int c = 0; c < 50; c++) {
            double at = 10 + chance.nextDouble();
            double sigma = 2 * chance.nextDouble();
            double[] rows = new double[40];
            int lines = 4000;
            for (int i = 0; i < lines; i++) {
                double y = at + Math.sqrt(3) * sigma * (2 * (i + 0.5) / lines - 1);
                int from = RowSpread.firstRow(y, 0);
                RowSpread.shares(y, 0, thin);
                rows[from] += thin[0] / lines;
                rows[from + 1] += thin[1] / lines;
            }
            int first = RowSpread.firstRow(at, sigma);
            int n = RowSpread.shares(at, sigma, shares);
            for (int j = 0; j < n; j++) {
                assertThat(shares[j]).as("seed %d, case %d", SEED, c).isCloseTo(rows[first + j], within(1e-6));
            }
        }
    }
}
