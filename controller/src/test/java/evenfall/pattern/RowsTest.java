package evenfall.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class RowsTest {
    private static final double ROW_M = 0.15;
    private static final double REACH_M = 3;

    /** Against sums over the band, half as wide as √3 standard deviations; and nothing is lost. */
    @Test
    void aLineThatIsSpreadGivesEachRowTheMeanOfItsHat() {
        Random random = new Random(2);
        for (int n = 0; n < 200; n++) {
            double atM = -2 + 4 * random.nextDouble();
            double sdM = 0.04 * random.nextDouble();
            Rows said = new Rows(ROW_M, 0.3, REACH_M);
            said.add(atM, 2, 0.5 * sdM, sdM);
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
        double bandM = 0.014;
        double aBitM = 1e-6;
        for (double atM = -0.5; atM < 0.5; atM += 0.0137) {
            Rows here = new Rows(ROW_M, 0.5, REACH_M);
            here.add(atM, 1, sdM, bandM);
            Rows right = new Rows(ROW_M, 0.5, REACH_M);
            right.add(atM + aBitM, 1, sdM, bandM);
            for (int row = 0; row < here.count(); row++) {
                assertThat(here.unsure(row))
                        .isCloseTo(sdM * (right.amount(row) - here.amount(row)) / aBitM, within(1e-4));
            }
        }
    }
}
