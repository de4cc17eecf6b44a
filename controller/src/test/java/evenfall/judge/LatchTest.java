package evenfall.judge;

import static evenfall.judge.Latch.Change.CLEARED;
import static evenfall.judge.Latch.Change.NONE;
import static evenfall.judge.Latch.Change.RAISED;
import static evenfall.judge.Verdict.BETWEEN;
import static evenfall.judge.Verdict.OVER;
import static evenfall.judge.Verdict.UNKNOWN;
import static evenfall.judge.Verdict.WELL;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Looks come every 0.2 s; the latch holds for 1 s and 5 m. */
class LatchTest {
    private static final double STEP_S = 0.2;

    private final Latch latch = new Latch(1, 5);
    private long nowUs;

    private Latch.Change look(Verdict verdict, double speedMps) {
        nowUs += 200_000;
        return latch.look(nowUs, STEP_S, speedMps * STEP_S, verdict);
    }

    @Test
    void raisesWhenTimeAndGroundHavePassedAndNotALookEarlier() {
        // At 6 m/s 5 m take 0.84 s, so the second decides: the first look starts it, the fifth after it is 1 s later.
        for (int i = 0; i < 5; i++) {
            assertThat(look(OVER, 6)).isEqualTo(NONE);
        }
        assertThat(look(OVER, 6)).isEqualTo(RAISED);
        assertThat(latch.sinceUs()).isEqualTo(200_000);
    }

    @Test
    void atWalkingPaceTheGroundDecides() {
        int looks = 1;
        while (look(OVER, 1) != RAISED) {
            looks++;
        }
        // 5 m at 1 m/s is 5 s: 25 steps after the first look.
        assertThat(looks).isEqualTo(26);
    }

    @Test
    void aLookInBetweenNeitherCountsNorBreaksTheRun() {
        look(OVER, 6);
        look(OVER, 6);
        look(BETWEEN, 6);
        look(OVER, 6);
        look(OVER, 6);
        look(OVER, 6);
        assertThat(latch.isStanding()).isFalse();
        assertThat(look(OVER, 6)).isEqualTo(RAISED);
    }

    @Test
    void oneGoodLookStartsTheRunAnew() {
        for (int i = 0; i < 5; i++) {
            look(OVER, 6);
        }
        look(WELL, 6);
        for (int i = 0; i < 5; i++) {
            assertThat(look(OVER, 6)).isEqualTo(NONE);
        }
        assertThat(look(OVER, 6)).isEqualTo(RAISED);
    }

    @Test
    void clearsOnlyWhenWellForAsLong() {
        while (look(OVER, 6) != RAISED) {}
        for (int i = 0; i < 50; i++) {
            assertThat(look(BETWEEN, 6)).isEqualTo(NONE);
        }
        for (int i = 0; i < 5; i++) {
            assertThat(look(WELL, 6)).isEqualTo(NONE);
        }
        assertThat(look(WELL, 6)).isEqualTo(CLEARED);
    }

    @Test
    void whatCannotBeJudgedDoesNotRaiseAndClearsWithoutGround() {
        for (int i = 0; i < 100; i++) {
            assertThat(look(UNKNOWN, 0)).isEqualTo(NONE);
        }
        while (look(OVER, 6) != RAISED) {}
        for (int i = 0; i < 5; i++) {
            assertThat(look(UNKNOWN, 0)).isEqualTo(NONE);
        }
        assertThat(look(UNKNOWN, 0)).isEqualTo(CLEARED);
    }

    @Test
    void neverRaisesTwiceWithinTheTimeThatRaisingAndClearingTake() {
        long seed = 31;
        Random random = new Random(seed);
        long raisedUs = Long.MIN_VALUE / 2;
        Verdict[] verdicts = Verdict.values();
        for (int i = 0; i < 200_000; i++) {
            Verdict verdict = verdicts[random.nextInt(20) == 0 ? random.nextInt(4) : (i / 40) % 4];
            if (look(verdict, 6) == RAISED) {
                assertThat(nowUs - raisedUs).as("seed %d look %d", seed, i).isGreaterThanOrEqualTo(2_000_000);
                raisedUs = nowUs;
            }
        }
        assertThat(raisedUs).isPositive();
    }

    @Test
    void neverThreeRaisesInAMinuteWhateverComes() {
        for (long seed = 1; seed <= 200; seed++) {
            Random random = new Random(seed);
            Latch any = new Latch(random.nextInt(3) * 0.5, random.nextInt(6));
            List<Long> raises = new ArrayList<>();
            Verdict verdict = WELL;
            for (int i = 1; i <= 3000; i++) {
                if (random.nextInt(8) == 0) {
                    verdict = Verdict.values()[random.nextInt(Verdict.values().length)];
                }
                if (any.look(i * 200_000L, STEP_S, 5.5 * STEP_S, verdict) == RAISED) {
                    raises.add(i * 200_000L);
                }
            }
            assertThat(raises).as("seed " + seed).hasSizeGreaterThan(3);
            for (int i = 2; i < raises.size(); i++) {
                assertThat(raises.get(i) - raises.get(i - 2)).as("seed " + seed).isGreaterThanOrEqualTo(60_000_000);
            }
        }
    }

    @Test
    void toldTwiceInAMinuteItStandsThroughTheRestOfIt() {
        for (int told = 0; told < 2; told++) {
            while (look(OVER, 6) != RAISED) {}
            if (told == 0) {
                while (look(WELL, 6) != CLEARED) {}
            }
        }
        while (look(WELL, 6) != CLEARED) {}
        assertThat(nowUs).isEqualTo(60_200_000L);
        assertThat(look(UNKNOWN, 6)).isEqualTo(NONE);
    }
}
