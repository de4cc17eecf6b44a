package evenfall.bench.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class AxisTest {
    private static final long SEED = 20261125;

    @Test
    void marksAreRoundAndFewAndTheirNumbersTellThemApart() {
        Random random = new Random(SEED);
        for (int n = 0; n < 500; n++) {
            double low = Math.pow(10, 4 * random.nextDouble() - 2) * (random.nextBoolean() ? 1 : -1);
            double high = low + Math.pow(10, 5 * random.nextDouble() - 2);
            Axis axis = Axis.of("x", low, high);
            String about = "seed " + SEED + ", case " + n + ": " + low + " to " + high;
            List<Double> marks = axis.marks();
            assertThat(marks.size()).as(about).isBetween(2, 9);
            assertThat(marks.stream().map(axis::text)).as(about).doesNotHaveDuplicates();
            double leading = axis.step() / Math.pow(10, Math.floor(Math.log10(axis.step() * 1.0001)));
            assertThat(List.of(1L, 2L, 5L)).as(about).contains(Math.round(leading));
            assertThat(leading).as(about).isCloseTo(Math.round(leading), within(1e-6));
            for (double mark : marks) {
                assertThat(Double.parseDouble(axis.text(mark))).as(about).isCloseTo(mark, within(1e-6 * axis.step()));
            }
        }
    }

    @Test
    void aroundBeginsAndEndsAtAMark() {
        Axis axis = Axis.around("rate", 0, 287);
        assertThat(axis.low()).isZero();
        assertThat(axis.high()).isGreaterThanOrEqualTo(287);
        assertThat(axis.marks().get(axis.marks().size() - 1)).isCloseTo(axis.high(), within(1e-9));
        assertThat(Axis.around("one value", 5, 5).high()).isGreaterThan(5);
    }

    @Test
    void anAxisOfNoLengthIsRefused() {
        assertThatThrownBy(() -> new Axis("x", 1, 1, 1, 0)).isInstanceOf(IllegalArgumentException.class);
    }
}
