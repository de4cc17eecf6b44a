package evenfall.detect;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.util.Random;
import java.util.function.DoubleSupplier;
import org.junit.jupiter.api.Test;

class ShiftTestTest {
    private static final double[] SIZES = {0.05, 0.10, 0.20};

    private static double meanBetweenAlarms(DoubleSupplier signal, double wanted, int alarms) {
        ShiftTest test = new ShiftTest(wanted, SIZES);
        Noise noise = new Noise(0.001, 1);
        for (int i = 0; i < 1000; i++) {
            noise.take(signal.getAsDouble());
        }
        long looks = 0;
        for (int n = 0; n < alarms; n++) {
            test.reset();
            do {
                double x = signal.getAsDouble();
                noise.take(x);
                test.take(x, noise.effective());
                looks++;
            } while (!test.isSure());
        }
        return (double) looks / alarms;
    }

    /** 100 alarms: the standard error of their mean is 10 %. Three tests that alarm together at times make up to three times as long. */
    @Test
    void falseAlarmsComeNoMoreOftenThanStated() {
        for (double sigma : new double[] {0.02, 0.05, 0.10}) {
            for (double wanted : new double[] {300, 1500}) {
                Random random = new Random(7);
                double white = meanBetweenAlarms(() -> sigma * random.nextGaussian(), wanted, 100);
                double windows = meanBetweenAlarms(new NoiseTest.Overlapping(new Random(8), sigma), wanted, 100);

                assertThat(white).as("white, σ %s", sigma).isBetween(0.75 * wanted, 10 * wanted);
                assertThat(windows).as("windows, σ %s", sigma).isBetween(0.75 * wanted, 30 * wanted);
            }
        }
    }

    @Test
    void unitsDoNotMatter() {
        for (int seed = 0; seed < 50; seed++) {
            Random random = new Random(seed);
            double scale = Math.exp(5 * random.nextGaussian());
            ShiftTest one = new ShiftTest(1000, 1, 3);
            ShiftTest other = new ShiftTest(1000, scale, 3 * scale);
            for (int i = 0; i < 300; i++) {
                double x = random.nextGaussian() + (i > 150 ? 1.5 : 0);
                one.take(x, 1);
                other.take(scale * x, scale);
                assertThat(other.isSure()).as("seed %d, look %d", seed, i).isEqualTo(one.isSure());
            }
        }
    }

    @Test
    void oneLookHoweverWildNeverDecides() {
        for (double sigma : new double[] {0.001, 0.05, 1}) {
            ShiftTest test = new ShiftTest(1.8e6, SIZES);
            test.take(1e9, sigma);

            assertThat(test.isSure()).isFalse();
            assertThat(test.isLeaning()).isTrue();
            test.take(-1e9, sigma);
            assertThat(test.isLeaning()).isFalse();
        }
    }

    @Test
    void aGreaterRiseIsNeverFoundLater() {
        for (int seed = 0; seed < 50; seed++) {
            Random random = new Random(seed);
            double[] noise = random.doubles(400, -1, 1).toArray();
            int before = Integer.MAX_VALUE;
            for (double rise : new double[] {0.8, 1.2, 2, 4}) {
                ShiftTest test = new ShiftTest(1e4, 1, 3);
                int looks = 0;
                while (looks < noise.length && !test.isSure()) {
                    test.take(noise[looks++] + rise, 1);
                }
                assertThat(looks).as("seed %d, rise %s", seed, rise).isLessThanOrEqualTo(before);
                before = looks;
            }
        }
    }

    @Test
    void afterALongExcessItComesBackAtThePaceOfAShortOne() {
        ShiftTest test = new ShiftTest(1e4, 1);
        for (int i = 0; i < 10_000; i++) {
            test.take(5, 1);
        }
        int looks = 0;
        while (test.isLeaning()) {
            test.take(-1, 1);
            looks++;
        }

        assertThat(looks).isLessThan(10);
    }

    @Test
    void looksMakeNoObjects() {
        var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        ShiftTest test = new ShiftTest(1.8e6, SIZES);
        Noise noise = new Noise(0.01, 1);
        Random random = new Random(1);
        long before = 0;
        for (int round = 0; round < 2; round++) {
            before = threads.getThreadAllocatedBytes(Thread.currentThread().getId());
            for (int i = 0; i < 50_000; i++) {
                double x = 0.05 * random.nextGaussian();
                noise.take(x);
                test.take(x, noise.effective());
            }
        }
        long allocated = threads.getThreadAllocatedBytes(Thread.currentThread().getId()) - before;

        // Less than a byte a look: what there is belongs to the measuring.
        assertThat(allocated).isLessThan(50_000);
    }
}
