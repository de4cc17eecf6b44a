package evenfall.bench.report;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class CountedTest {
    @Test
    void oneThingHasNoPlural() {
        assertThat(Counted.text(0, "fix")).isEqualTo("0 fixes");
        assertThat(Counted.text(1, "fix")).isEqualTo("1 fix");
        assertThat(Counted.text(2, "message")).isEqualTo("2 messages");
    }
}
