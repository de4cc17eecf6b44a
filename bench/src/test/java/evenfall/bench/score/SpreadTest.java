package evenfall.bench.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class SpreadTest {
    @Test
    void meanAndPercentileAreThoseOfASortedListToOnePercent() {
        for (long seed = 1; seed <= 20; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            double scale = Math.pow(10, random.nextDouble(-4, 4));
            double[] magnitudes = new double[1 + random.nextInt(3000)];
            Spread one = new Spread();
            Spread other = new Spread();
            double sum = 0;
            for (int i = 0; i < magnitudes.length; i++) {
                double difference = scale * (random.nextDouble() - 0.3);
                sum += difference;
                magnitudes[i] = Math.abs(difference);
                (random.nextBoolean() ? one : other).add(difference);
            }
            one.add(other);
            Arrays.sort(magnitudes);
            double p95 = magnitudes[(int) Math.ceil(0.95 * magnitudes.length) - 1];
            assertThat(one.count()).isEqualTo(magnitudes.length);
            assertThat(one.mean()).as("seed %d", seed).isCloseTo(sum / magnitudes.length, within(1e-9 * scale));
            assertThat(one.p95()).as("seed %d", seed).isBetween(p95 * (1 - 1e-9), p95 * 1.0101);
        }
    }

    @Test
    void nothingComparedIsNotZero() {
        assertThat(new Spread().mean()).isNull();
        assertThat(new Spread().p95()).isNull();
    }
}
