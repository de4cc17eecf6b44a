package evenfall.detect;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.function.DoubleSupplier;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

class NoiseTest {
    private static final int LONG = 20_000;

    /** Mean of the effective deviation while it runs, and of the correlation. */
    private static double[] seen(DoubleSupplier signal) {
        Noise noise = new Noise(1e-6, 1);
        double effective = 0;
        double rho = 0;
        int n = 0;
        for (int i = 0; i < LONG; i++) {
            noise.take(signal.getAsDouble());
            if (i > 1000) {
                effective += noise.effective();
                rho += noise.correlation();
                n++;
            }
        }
        return new double[] {effective / n, rho / n};
    }

    @Test
    void independentLooksAreWorthWhatTheyAre() {
        Random random = new Random(1);
        double[] seen = seen(random::nextGaussian);

        // Squares count for no more than nine times what was thought, which costs a few percent of a normal's.
        assertThat(seen[0]).isBetween(0.93, 1.12);
        assertThat(seen[1]).isLessThan(0.1);
    }

    @Test
    void looksThatDieAwayGeometricallyAreWorthTheirLongRunScatter() {
        for (double rho : new double[] {0.2, 0.35, 0.5}) {
            Random random = new Random(2);
            double[] x = new double[1];
            double[] seen = seen(() -> {
                x[0] = rho * x[0] + Math.sqrt(1 - rho * rho) * random.nextGaussian();
                return x[0];
            });
            double truth = Math.sqrt((1 + rho) / (1 - rho));
            assertThat(seen[0]).as("ρ %s", rho).isCloseTo(truth, Percentage.withPercentage(15));
        }
    }

    @Test
    void overlappingWindowsAreNotTakenForBetterThanTheyAre() {
        double[] seen = seen(new Overlapping(new Random(3), 1));
        double truth = Math.sqrt(1 + 2.0 / 3);

        assertThat(seen[0]).isBetween(truth, 1.25 * truth);
        assertThat(seen[1]).isBetween(0.3, 0.45);
    }

    @Test
    void neitherLevelNorRampNorAStepIsNoise() {
        for (int seed = 0; seed < 20; seed++) {
            Random random = new Random(seed);
            Noise plain = new Noise(1e-6, 1);
            Noise ramped = new Noise(1e-6, 1);
            Noise stepped = new Noise(1e-6, 1);
            for (int i = 0; i < 2000; i++) {
                double x = random.nextGaussian();
                plain.take(x);
                ramped.take(x + 1000 + 0.3 * i);
                stepped.take(x + (i < 1990 ? 0 : 20));
            }
            assertThat(ramped.effective()).isCloseTo(plain.effective(), within(1e-6));
            assertThat(stepped.effective()).isCloseTo(plain.effective(), Percentage.withPercentage(30));
        }
    }

    @Test
    void aSignalThatStandsStillKeepsTheScatterOfItsSensors() {
        Noise noise = new Noise(0.01, 1);
        for (int i = 0; i < 1000; i++) {
            noise.take(5);
        }

        assertThat(noise.effective()).isCloseTo(0.01, within(1e-9));
    }

    /** Means of three readings on a grid of two: what a window of 0.3 s at ten readings a second gives five times a second. */
    static final class Overlapping implements DoubleSupplier {
        private final Random random;
        private final double sigma;
        private double shared;

        /** @param sigma standard deviation of a mean */
        Overlapping(Random random, double sigma) {
            this.random = random;
            this.sigma = sigma;
            shared = random.nextGaussian();
        }

        @Override
        public double getAsDouble() {
            double sum = shared + random.nextGaussian();
            shared = random.nextGaussian();
            return sigma * (sum + shared) / Math.sqrt(3);
        }
    }
}
