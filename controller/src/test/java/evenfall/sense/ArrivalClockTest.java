package evenfall.sense;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * A hub that speaks 40 times a second over a line that is late by 0.3 ms at least, by another 0 to 5 ms as a rule, and now and then by up to
 * 80 ms. Sentences arrive in order. What is asked: the event time of a tick, against the time it really was.
 */
class ArrivalClockTest {
    private static final long RANGE = 1L << 32;
    private static final long LEAST_US = 300;

    /** One run: the hub's clock began at {@code startTick} and runs {@code ppm} too fast; the worst error of an event time, µs. */
    private static double worstUs(long seed, long startTick, double ppm, long forUs) {
        Random random = new Random(seed);
        ArrivalClock clock = new ArrivalClock(RANGE, LEAST_US);
        long lastArrival = 0;
        double worst = 0;
        for (long us = 0; us < forUs; us += 25_000) {
            long tick = Math.floorMod(startTick + Math.round(us * (1 + ppm * 1e-6)), RANGE);
            long late = LEAST_US + random.nextInt(5_000) + (random.nextInt(20) == 0 ? random.nextInt(75_000) : 0);
            lastArrival = Math.max(lastArrival, us + late);
            ArrivalClock.Step step = clock.hear(lastArrival, tick);
            assertThat(step).as("at %d, seed %d", us, seed).isEqualTo(ArrivalClock.Step.RUNS);
            if (us > 2_000_000) {
                worst = Math.max(worst, Math.abs(clock.eventUs(tick) - us));
            }
        }
        return worst;
    }

    @Test
    void aTicksTimeIsKnownToAMillisecondWhateverDriftAndWrap() {
        for (long seed = 1; seed <= 20; seed++) {
            Random random = new Random(seed);
            double ppm = 400 * random.nextDouble() - 200;
            long start = (long) (RANGE * random.nextDouble());
            assertThat(worstUs(seed, start, ppm, 60_000_000))
                    .as("seed %d", seed)
                    .isLessThan(1_500);
        }
        // Two turns of the counter.
        assertThat(worstUs(99, 4_000_000_000L, 200, 2 * RANGE)).isLessThan(1_500);
        assertThat(worstUs(99, 4_000_000_000L, -200, 2 * RANGE)).isLessThan(1_500);
    }

    @Test
    void anEdgeBeforeTheSentenceIsDatedToo() {
        ArrivalClock clock = new ArrivalClock(RANGE, LEAST_US);
        clock.hear(10_000_300, 40);

        assertThat(clock.eventUs(RANGE - 60)).isEqualTo(9_999_900);
    }

    @Test
    void noEventTimeLiesAfterItsArrival() {
        long seed = 7;
        Random random = new Random(seed);
        ArrivalClock clock = new ArrivalClock(RANGE, LEAST_US);
        long arrival = 0;
        long tick = 0;
        for (int i = 0; i < 5_000; i++) {
            tick += 1 + random.nextInt(200_000);
            arrival = Math.max(arrival, tick + random.nextInt(300_000));
            clock.hear(arrival, tick);
            assertThat(clock.eventUs(tick)).as("seed %d", seed).isLessThanOrEqualTo(arrival);
        }
    }

    @Test
    void aRestartIsSeenWheneverItComes() {
        for (long seed = 1; seed <= 200; seed++) {
            Random random = new Random(seed);
            ArrivalClock clock = new ArrivalClock(RANGE, LEAST_US);
            long start = (long) (RANGE * random.nextDouble());
            long us = 0;
            for (int i = 0; i < 100; i++) {
                us += 25_000;
                clock.hear(us + 2_000, Math.floorMod(start + us, RANGE));
            }
            long before = Math.floorMod(start + us, RANGE);
            us += 1_000_000 + random.nextInt(30_000_000);
            // A new tick that happens to be where the old clock would be, or less than so much on, cannot be told; the
            // boot count can.
            if (before > RANGE - 60_000_000L || before < 60_000_000L) {
                continue;
            }
            assertThat(clock.hear(us, 40_000)).as("seed %d", seed).isEqualTo(ArrivalClock.Step.RESTARTED);
            assertThat(clock.eventUs(40_000)).isEqualTo(us - LEAST_US);
        }
    }

    @Test
    void eventTimeThatLeapsIsNoRestart() {
        for (long leapUs : new long[] {600_000, 4_000_000, 3_600_000_000L}) {
            ArrivalClock clock = new ArrivalClock(RANGE, LEAST_US);
            long tick = 4_290_000_000L;
            long us = 0;
            for (int i = 0; i < 400; i++) {
                us += 25_000;
                ArrivalClock.Step step =
                        clock.hear(us + (i < 100 ? 0 : leapUs) + LEAST_US, Math.floorMod(tick + us, RANGE));
                assertThat(step).as("leap %d", leapUs).isNotEqualTo(ArrivalClock.Step.RESTARTED);
            }
            // Six seconds later the new relation holds.
            assertThat(clock.eventUs(Math.floorMod(tick + us, RANGE)) - us - leapUs)
                    .isBetween(-1_500L, 1_500L);
        }
    }

    @Test
    void aSilenceOfManyTurnsDoesNoHarm() {
        ArrivalClock clock = new ArrivalClock(RANGE, LEAST_US);
        clock.hear(LEAST_US, 17);
        long later = 3 * RANGE + 123_456_789L;

        assertThat(clock.hear(later + LEAST_US, Math.floorMod(later + 17, RANGE)))
                .isEqualTo(ArrivalClock.Step.RUNS);
        assertThat(clock.eventUs(Math.floorMod(later + 17, RANGE))).isEqualTo(later);
    }

    @Test
    void aClockThatGoesBackByLittleHasStartedAnewToo() {
        ArrivalClock clock = new ArrivalClock(1L << 32, 0);
        for (int i = 1; i <= 10; i++) {
            clock.hear(500_000 + i * 100_000L, i * 100_000L);
        }
        assertThat(clock.hear(5_600_000, 100_000)).isEqualTo(ArrivalClock.Step.RESTARTED);
        assertThat(clock.eventUs(100_000)).isEqualTo(5_600_000);
    }
}
