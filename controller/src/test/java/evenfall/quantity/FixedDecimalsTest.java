package evenfall.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FixedDecimalsTest {
    @ParameterizedTest
    @CsvSource({
        "0, 0, 0",
        "0, 3, 0.000",
        "-0.0004, 3, 0.000",
        "-0.0006, 3, -0.001",
        "1.25, 1, 1.3",
        "-1.25, 1, -1.3",
        "999.9996, 3, 1000.000",
        "1000000000000, 6, 1000000000000.000000",
        "0.5, 0, 1",
        "12.07, 1, 12.1"
    })
    void writesFixedDecimalsRoundedHalfAwayFromZero(double value, int decimals, String expected) {
        assertThat(FixedDecimals.text(value, decimals)).isEqualTo(expected);
    }

    @Test
    void agreesWithBigDecimalAwayFromTies() {
        long seed = 20260311;
        Random random = new Random(seed);
        for (int i = 0; i < 20_000; i++) {
            int decimals = random.nextInt(7);
            double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(9));
            String expected = new BigDecimal(value)
                    .setScale(decimals, RoundingMode.HALF_UP)
                    .toPlainString();
            if (new BigDecimal(expected).signum() == 0) {
                expected = expected.replace("-", "");
            }
            assertThat(FixedDecimals.text(value, decimals))
                    .as("seed %d, value %s, decimals %d", seed, value, decimals)
                    .isEqualTo(expected);
        }
    }

    @Test
    void wholeNumbersAreThoseOfJava() {
        long seed = 5;
        Random random = new Random(seed);
        byte[] out = new byte[FixedDecimals.LONGEST + 1];
        for (int i = 0; i < 2000; i++) {
            long value = i < 2 ? i * Long.MAX_VALUE : random.nextLong() >> random.nextInt(64);
            out[0] = '#';
            int end = FixedDecimals.write(out, 1, value);
            assertThat(new String(out, 0, end, StandardCharsets.US_ASCII))
                    .as("seed %d", seed)
                    .isEqualTo("#" + value);
        }
        assertThatThrownBy(() -> FixedDecimals.write(out, 0, Long.MIN_VALUE))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void theLongestFitsTheRoomThatIsAskedFor() {
        byte[] out = new byte[FixedDecimals.LONGEST];
        assertThat(FixedDecimals.write(out, 0, -FixedDecimals.LARGEST, 6)).isLessThanOrEqualTo(out.length);
        assertThat(FixedDecimals.write(out, 0, -Long.MAX_VALUE)).isLessThanOrEqualTo(out.length);
    }

    @Test
    void refusesWhatIsNoNumber() {
        for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY, -1e13}) {
            assertThatThrownBy(() -> FixedDecimals.text(bad, 2)).isInstanceOf(IllegalArgumentException.class);
        }
    }
}
