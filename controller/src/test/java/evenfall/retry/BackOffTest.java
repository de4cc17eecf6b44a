package evenfall.retry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class BackOffTest {
    @Test
    void waitsDoubleUpToTheLongestAndBeginAnewAfterASuccess() {
        BackOff backOff = new BackOff(Duration.ofMillis(250), Duration.ofSeconds(2));
        long[] waits = new long[6];
        for (int i = 0; i < waits.length; i++) {
            waits[i] = backOff.nextMs();
        }
        assertThat(waits).containsExactly(250, 500, 1000, 2000, 2000, 2000);
        backOff.reset();
        assertThat(backOff.nextMs()).isEqualTo(250);
    }

    @Test
    void aFirstWaitOfNothingWouldSpinAndIsRefused() {
        assertThatThrownBy(() -> new BackOff(Duration.ZERO, Duration.ofSeconds(1)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new BackOff(Duration.ofSeconds(2), Duration.ofSeconds(1)))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
