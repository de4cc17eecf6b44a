package evenfall.detect;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.DoubleSupplier;
import org.junit.jupiter.api.Test;

/**
 * How long a step of the rate takes to be found, at one false alarm in 100 h, against the bound that no test can beat as that time grows:
 * {@code log(ARL0) / I} (Lorden, Annals of Mathematical Statistics 42, 1971, from memory). For a normal shift of δ standard deviations
 * {@code I = δ²/2}; where looks are correlated the standard deviation is that of the long run. The document's table is what is measured here.
 */
class DelayTest {
    private static final double LOOKS = 100 * 3600 * 5;
    private static final double[] SIZES = {0.05, 0.10, 0.20};
    private static final int RUNS = 500;

    /** By rule one look alone never decides. */
    private static final double LEAST_LOOKS = 2;

    private record Signal(String name, double sigma, boolean windows) {
        DoubleSupplier noise(Random random) {
            return windows ? new NoiseTest.Overlapping(random, sigma) : () -> sigma * random.nextGaussian();
        }

        double longRun() {
            return windows ? sigma * Math.sqrt(1 + 2.0 / 3) : sigma;
        }
    }

    /** A receiver's speed scatters by 0.03 m/s, a jumpy one's by 0.6 m/s; three readings at 5.5 m/s make a look. */
    private static final List<Signal> SIGNALS = List.of(
            new Signal("white, 2 %", 0.02, false),
            new Signal("white, 5 %", 0.05, false),
            new Signal("white, 10 %", 0.10, false),
            new Signal("windows of an ordinary receiver, 0.3 %", 0.03 / 5.5 / Math.sqrt(3), true),
            new Signal("windows of a jumpy receiver, 6.3 %", 0.6 / 5.5 / Math.sqrt(3), true));

    private static double meanDelay(Signal signal, double step) {
        Random random = new Random(11);
        DoubleSupplier noise = signal.noise(random);
        long looks = 0;
        for (int run = 0; run < RUNS; run++) {
            ShiftTest test = new ShiftTest(LOOKS, SIZES);
            Noise scatter = new Noise(0.001, 1);
            for (int i = 0; i < 600; i++) {
                scatter.take(noise.getAsDouble());
            }
            while (!test.isSure()) {
                double x = step + noise.getAsDouble();
                scatter.take(x);
                test.take(x, scatter.effective());
                looks++;
            }
        }
        return (double) looks / RUNS;
    }

    @Test
    void isWithinHalfMoreOfTheBound() throws Exception {
        List<String> rows = new ArrayList<>();
        for (Signal signal : SIGNALS) {
            StringBuilder row = new StringBuilder("| " + signal.name());
            for (double step : SIZES) {
                double delay = meanDelay(signal, step);
                double shift = step / signal.longRun();
                double bound = Math.log(LOOKS) / (0.5 * shift * shift);
                row.append(String.format(Locale.ROOT, " | %.1f (%.1f)", delay / 5, bound / 5));
                assertThat(delay)
                        .as("%s, step %s, bound %s looks", signal.name(), step, bound)
                        .isLessThanOrEqualTo(1.5 * Math.max(bound, LEAST_LOOKS));
            }
            rows.add(row.append(" |").toString());
        }
        String document = Files.readString(Path.of("docs", "judgement.md"));

        assertThat(document).as("measured now:\n%s", String.join("\n", rows)).contains(rows);
    }
}
