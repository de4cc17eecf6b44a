package evenfall.bench.prove.guide;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.config.ConfigException;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SpeedGuideTest {
    @Test
    void aWheelThatSlipsOnSoftGroundShowsItsSpread() {
        Walk walk = new Walk(Prover.SPEED, Optional.empty())
                .answer("sensor", "wheel")
                .answer("against", "course")
                .answer("course", "100 m")
                .answer("course_accuracy", "5 cm");
        long[] pulses = {2500, 2501, 2499, 2350, 2351, 2349};
        for (int i = 1; i <= 6; i++) {
            if (i > 1) {
                walk.answer("runs[" + i + "]", "yes");
            }
            walk.answer("runs[" + i + "].ground", i <= 3 ? "hard" : "soft")
                    .answer("runs[" + i + "].counted", pulses[i - 1] + " in 30 s");
        }
        Proof proof = walk.answer("runs[7]", "no").proof();
        assertThat(proof.result().path("wheel").path("value_pulses_per_m").asDouble())
                .isCloseTo(24.25, within(1e-9));
        assertThat(proof.result().path("slip_spread_pct").asDouble()).isCloseTo(100 * 1.5 / 24.25, within(1e-6));
        assertThat(proof.passed()).isFalse();
        assertThat(proof.constants().get(0).rigPlace()).isEqualTo("sensors.wheel.pulses_per_m");
    }

    @Test
    void aReceiverIsTriedAgainstTheCourse() {
        Walk walk = new Walk(Prover.SPEED, Optional.empty())
                .answer("sensor", "receiver")
                .answer("course", "200 m")
                .answer("course_accuracy", "");
        for (int i = 1; i <= 3; i++) {
            if (i > 1) {
                walk.answer("runs[" + i + "]", "yes");
            }
            walk.answer("runs[" + i + "].ground", "").answer("runs[" + i + "].counted", (198 + 0.1 * i) + " m in 60 s");
        }
        Proof proof = walk.answer("runs[4]", "no").proof();
        assertThat(proof.findings())
                .filteredOn(f -> f.limit().name().equals("receiver-error"))
                .singleElement()
                .satisfies(f -> assertThat(f.measured()).isCloseTo(0.9, within(1e-6)));
        assertThat(proof.passed()).isTrue();
    }

    @Test
    void aWheelIsTriedAgainstTheReceiver() {
        Walk walk = new Walk(Prover.SPEED, Optional.empty())
                .answer("sensor", "")
                .answer("against", "receiver")
                .answer("receiver_accuracy", "");
        walk.answer("runs[1].ground", "");
        walk.refuses("2410 in 36 s", "2410 over 99.7 m in 36.2 s");
        walk.answer("runs[1].counted", "2410 over 100.4 m in 36.2 s");
        walk.refuses("no", "field has 1 of 3 runs");
    }

    @Test
    void aRigWithoutAWheelGetsARemarkOnly() throws ConfigException {
        Walk walk = new Walk(Prover.SPEED, Optional.of(FlowGuideTest.rig()))
                .answer("sensor", "")
                .answer("against", "")
                .answer("course", "100 m")
                .answer("course_accuracy", "");
        for (int i = 1; i <= 3; i++) {
            if (i > 1) {
                walk.answer("runs[" + i + "]", "yes");
            }
            walk.answer("runs[" + i + "].ground", "").answer("runs[" + i + "].counted", "2500 in 30 s");
        }
        Proof proof = walk.answer("runs[4]", "no").proof();
        assertThat(proof.constants().get(0).rigPlace()).isNull();
        assertThat(proof.advice()).anyMatch(line -> line.contains("names no wheel sensor"));
    }
}
