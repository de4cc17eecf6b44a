package evenfall.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RowsTest {
    private static final double ROW_M = 0.15;
    private static final double REACH_M = 3;

    /** Against sums over the band, half as wide as √3 standard deviations; and nothing is lost. */
    @Test
    void aLineThatIsSpreadAndOfUnsurePlaceGivesEachRowTheMeanOfItsHat() {
        Random random = new Random(2);
        for (int n = 0; n < 200; n++) {
            double atM = -2 + 4 * random.nextDouble();
            double sdM = 0.04 * random.nextDouble();
            Rows said = new Rows(ROW_M, 0.3, REACH_M);
            addUnsure(said, 0.3, atM, 2, 0.6 * sdM, 0.8 * sdM);
            Rows summed = new Rows(ROW_M, 0.3, REACH_M);
            int parts = 4000;
            for (int i = 0; i < parts; i++) {
                summed.add(atM + Math.sqrt(3) * sdM * (2 * (i + 0.5) / parts - 1), 2.0 / parts);
            }
            double total = 0;
            double moved = 0;
            for (int row = 0; row < said.count(); row++) {
                assertThat(said.amount(row)).isCloseTo(summed.amount(row), within(1e-6));
                total += said.amount(row);
                moved += said.unsure(row);
            }
            assertThat(total).isCloseTo(2, within(1e-12));
            assertThat(moved).isCloseTo(0, within(1e-12));
        }
    }

    /** By moving the line a little. */
    @Test
    void howUnsureARowIsGoesByHowItsShareChangesWithThePlace() {
        double sdM = 0.01;
        double aBitM = 1e-6;
        for (double atM = -0.5; atM < 0.5; atM += 0.0137) {
            Rows here = new Rows(ROW_M, 0.5, REACH_M);
            addUnsure(here, 0.5, atM, 1, sdM, 0.012);
            Rows right = new Rows(ROW_M, 0.5, REACH_M);
            addUnsure(right, 0.5, atM + aBitM, 1, sdM, 0.012);
            for (int row = 0; row < here.count(); row++) {
                assertThat(here.unsure(row))
                        .isCloseTo(sdM * (right.amount(row) - here.amount(row)) / aBitM, within(1e-4));
            }
        }
    }

    /** Sure or not, near an end or beyond: what is not on a row that is kept is beyond. */
    @Test
    void linesAtOnceFallAsOneByOne() {
        Random random = new Random(3);
        int n = 400;
        double[] atM = new double[n];
        double[] none = new double[n];
        double[] quantity = new double[n];
        Arrays.fill(quantity, 0.7);
        Rows alone = new Rows(ROW_M, 0.2, REACH_M);
        for (int i = 0; i < n; i++) {
            atM[i] = 8 * random.nextDouble() - 4;
            alone.add(atM[i], 0.7);
        }
        Nearness lines = new Nearness(ROW_M, 0.2, n);
        lines.find(atM, none, none, n);
        Rows sure = new Rows(ROW_M, 0.2, REACH_M);
        sure.add(lines, quantity);
        Rows unsure = new Rows(ROW_M, 0.2, REACH_M);
        unsure.addUnsure(lines, quantity);
        double kept = 0;
        for (int row = 0; row < alone.count(); row++) {
            assertThat(sure.amount(row)).isCloseTo(alone.amount(row), within(1e-9));
            assertThat(unsure.amount(row)).isCloseTo(alone.amount(row), within(1e-9));
            assertThat(unsure.unsure(row)).isZero();
            kept += alone.amount(row);
        }
        assertThat(kept).isLessThan(0.7 * n - 1);
        assertThat(kept + alone.beyond()).isCloseTo(0.7 * n, within(1e-9));
        assertThat(sure.beyond()).isCloseTo(alone.beyond(), within(1e-9));
        assertThat(unsure.beyond()).isCloseTo(alone.beyond(), within(1e-9));
    }

    private static void addUnsure(Rows rows, double phase, double atM, double quantity, double sdM, double spreadM) {
        Nearness line = new Nearness(ROW_M, phase, 1);
        line.find(new double[] {atM}, new double[] {sdM}, new double[] {spreadM}, 1);
        rows.addUnsure(line, new double[] {quantity});
    }
}
