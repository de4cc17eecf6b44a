package evenfall.bench.prove.guide;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import evenfall.config.ConfigException;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class OutletsGuideTest {
    private static Walk begun(int outlets) {
        return new Walk(Prover.OUTLETS, Optional.empty())
                .answer("outlets", Integer.toString(outlets))
                .answer("measured_by", "jug")
                .answer("accuracy", "0.02 L")
                .answer("step", "0.01 L")
                .answer("nominal", "1.5 L/min")
                .answer("catch_time", "60 s")
                .answer("time_accuracy", "0.5 s");
    }

    private static Walk repeats(Walk walk) {
        return walk.answer("repeats[1]", "1.50 L")
                .answer("repeats[2]", "1.51 L")
                .answer("repeats[3]", "1.49 L")
                .answer("repeats[4]", "no");
    }

    @Test
    void wornBlockedAndDoubtfulOutletsAreNamed() {
        Walk walk = begun(6);
        String[] caught = {"1.50 L", "1.80 L", "0.30 L", "1.28 L", "1.52 L", "1.49 L"};
        for (int i = 0; i < caught.length; i++) {
            walk.answer("catches[" + (i + 1) + "]", caught[i]);
        }
        Proof proof = repeats(walk).answer("speed", "no").proof();
        JsonNode outlets = proof.result().path("outlets");
        assertThat(outlets)
                .extracting(o -> o.path("state").asText())
                .containsExactly("apart", "worn", "blocked", "low", "apart", "apart");
        assertThat(outlets.path(1).path("off_nominal_pct").asDouble()).isCloseTo(20, within(1e-6));
        assertThat(proof.passed()).isFalse();
        assertThat(proof.advice()).anyMatch(line -> line.startsWith("Replace") && line.endsWith(": 2."));
        assertThat(proof.advice()).anyMatch(line -> line.startsWith("Blocked") && line.endsWith(": 3."));
        assertThat(proof.advice()).anyMatch(line -> line.contains("renew the whole set"));
    }

    @Test
    void anOutletWithinItsUncertaintyOfALimitIsDoubtful() {
        Walk walk = begun(8);
        for (int i = 1; i <= 8; i++) {
            // 10 % over is 1.65 L.
            walk.answer("catches[" + i + "]", i == 3 ? "1.64 L" : "1.50 L");
        }
        Proof proof = repeats(walk).answer("speed", "no").proof();
        assertThat(proof.passed()).isTrue();
        assertThat(proof.result().path("outlets"))
                .filteredOn(o -> o.path("doubtful").asBoolean())
                .extracting(o -> o.path("outlet").asInt())
                .containsExactly(3);
    }

    @Test
    void theShortcutGivesTheRateInGallons() {
        Walk walk = begun(2).answer("catches[1]", "1.52946 L").answer("catches[2]", "1.52946 L");
        Proof proof = repeats(walk)
                .answer("speed", "yes")
                .answer("speed", "6 mph")
                .answer("spacing", "20 in")
                .proof();
        // 20 US gal/ac at 6 mph and 20 in takes 1.529459 L/min (5940-identity of the calibration sheets); 204 ft of
        // course.
        JsonNode over = proof.result().path("over_ground");
        assertThat(over.path("ounces_as_US_gal_per_acre").asDouble()).isCloseTo(20, within(1e-4));
        assertThat(over.path("rate_Lpha").asDouble()).isCloseTo(187.079, within(1e-3));
        assertThat(over.path("course_128th_acre_m").asDouble() / 0.3048).isCloseTo(204.1875, within(1e-3));
    }

    @Test
    void aNegativeCatchIsRefusedAndZeroIsABlockedOutlet() {
        Walk walk = begun(2).refuses("-0.1 L", "not tared")
                .answer("catches[1]", "0 L")
                .answer("catches[2]", "1.5 L");
        Proof proof = repeats(walk).answer("speed", "no").proof();
        assertThat(proof.result().path("outlets").path(0).path("state").asText())
                .isEqualTo("blocked");
    }

    @Test
    void nominalComesFromTheRigByTheOrificeLaw() throws ConfigException {
        Walk walk = new Walk(Prover.OUTLETS, Optional.of(FlowGuideTest.rig()))
                .answer("outlets", "2")
                .answer("measured_by", "jug")
                .answer("accuracy", "0.02 L")
                .answer("step", "0.01 L")
                .answer("pressure", "50 kPa")
                .answer("density", "1.2777 kg/L");
        // 2.8 L/min of water at 200 kPa: a quarter of the pressure halves it, SG 1.28 divides by its root.
        assertThat(((Step.Ask) walk.guide().step()).usual()).isEqualTo("1.237 L/min");
    }
}
