package evenfall.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

class LinesTest {
    /** Lines are reused from moment to moment and begin with the order of the one before: nothing of that may show. */
    @Test
    void whatWasBeforeChangesNothing() {
        long seed = 31;
        Random random = new Random(seed);
        Lines reused = new Lines(40);
        for (int moment = 0; moment < 500; moment++) {
            reused.clear();
            Lines fresh = new Lines(40);
            for (int slot = 0; slot < 40; slot++) {
                if (random.nextInt(4) > 0) {
                    // Few places, so that many lines lie at the same one.
                    double atM = 0.05 * random.nextInt(60);
                    double flow = 0.1 + random.nextDouble();
                    reused.add(slot, atM, flow, slot / 4);
                    fresh.add(slot, atM, flow, slot / 4);
                }
            }
            if (random.nextInt(3) > 0) {
                for (double fromM : new double[] {-1, 0.5}) {
                    assertThat(reused.measure(fromM, 2.5, 0.05))
                            .as("seed %d, moment %d", seed, moment)
                            .isEqualTo(fresh.measure(fromM, 2.5, 0.05));
                }
            }
        }
    }

    @Test
    void gapsAndDoubledLinesByHand() {
        Lines lines = new Lines(4);
        lines.add(2, 0.30, 0.5, 1);
        lines.add(0, 0.00, 1.0, 0);
        lines.add(3, 0.32, 0.25, 0);
        lines.add(1, 0.10, 0.25, 0);

        // From 0.10 to 0.30 m is the widest gap; the two at 0.30 and 0.32 m come from different outlets.
        assertThat(lines.measure(-1, 1, 0.05).widestGapM()).isEqualTo(0.30 - 0.10);
        assertThat(lines.measure(-1, 1, 0.05).doubledShare()).isEqualTo(0.75 / 2.0);
        assertThat(lines.measure(0.31, 1, 0.05)).isNull();
    }
}
