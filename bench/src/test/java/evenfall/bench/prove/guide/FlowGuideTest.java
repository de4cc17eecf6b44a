package evenfall.bench.prove.guide;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.config.ConfigException;
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class FlowGuideTest {
    static Rig rig() throws ConfigException {
        return RigFile.read(Path.of("../controller/docs/example-rig.yaml"));
    }

    private static Walk begun(Optional<Rig> rig, Map<String, Double> limits) {
        return new Walk(Prover.FLOW, rig, Units.METRIC, limits)
                .answer("measured_by", "scale")
                .answer("accuracy", "0.02 kg")
                .answer("step", "0.01 kg")
                .answer("density", "0.9982 kg/L")
                .answer("density_accuracy", "0.5 kg/m3")
                .answer("liquid_temperature", "14 C");
    }

    private static Walk run(Walk walk, int number, String flow, String full, long pulses) {
        if (number > 1) {
            walk.answer("runs[" + number + "]", "yes");
        }
        String run = "runs[" + number + "].";
        return walk.answer(run + "flow", flow)
                .answer(run + "empty", "1.20 kg")
                .answer(run + "counted", pulses + " in 60 s")
                .answer(run + "full", full);
    }

    @Test
    void threeCatchesGiveAKFactorBesideTheRigs() throws ConfigException {
        Walk walk = begun(Optional.of(rig()), Map.of());
        run(walk, 1, "working", "21.20 kg", 3000);
        run(walk, 2, "", "21.18 kg", 2998);
        run(walk, 3, "", "21.22 kg", 3001);
        Proof proof = walk.answer("runs[4]", "no").proof();
        // 3000 pulses for 20 kg of water: 20.000 · (1 + 0.00105) / 0.9982 L, by hand.
        assertThat(proof.result().path("k_factor").path("value_pulses_per_L").asDouble())
                .isCloseTo(3000 / (20.0 * 1.001054 / 0.9982), within(0.05));
        assertThat(proof.passed()).isTrue();
        assertThat(proof.constants().get(0).rigPlace()).isEqualTo("sensors.flow.pulses_per_L");
        assertThat(proof.advice()).anyMatch(line -> line.contains("One flow only"));
        assertThat(proof.method()).anyMatch(line -> line.contains("JCGM 100:2008"));
    }

    @Test
    void whatIsMissingOrWrongIsOneLineAndIsAskedAgain() {
        Walk walk = new Walk(Prover.FLOW, Optional.empty());
        assertThat(walk.guide().notes()).anyMatch(note -> note.startsWith("Caution: liquid under pressure"));
        walk.refuses("bucket", "bucket", "scale, jug").answer("measured_by", "");
        walk.refuses("0.02", "no unit", "kg")
                .refuses("", "missing")
                .refuses("0.02 L", "not a unit")
                .refuses("little", "not a number");
        walk.answer("accuracy", "0.02 kg")
                .answer("step", "10 g")
                .refuses("12.8 kg/L", "cannot be", "from 0.7 to 1.8 kg/L");
        walk.answer("density", "1.28 kg/L").answer("density_accuracy", "").answer("liquid_temperature", "57 F");
        walk.answer("runs[1].flow", "");
        walk.refuses("-0.4 kg", "not tared").answer("runs[1].empty", "1.2 kg");
        walk.refuses("many", "no count", "3021 in 60.4 s")
                .refuses("0 in 60 s", "nothing was counted")
                .refuses("30 in 0 s", "no length");
        walk.answer("runs[1].counted", "3000 in 60 s");
        walk.refuses("0.8 kg", "-0.4 kg").refuses("1.21 kg", "empty was 1.2 kg").answer("runs[1].full", "21.2 kg");
        walk.refuses("no", "working flow has 1 of 3 runs").refuses("perhaps", "neither yes nor no");
    }

    @Test
    void windowsThatContradictThemselvesAreRefused() {
        Walk walk = begun(Optional.empty(), Map.of()).answer("runs[1].flow", "").answer("runs[1].empty", "0 kg");
        walk.refuses(count(100L, false, true, false, 0.1), "when the window began");
        walk.refuses(count(100L, false, false, true, 0.1), "when the window ended");
        walk.refuses(count(100L, true, false, false, 0.1), "started anew");
        walk.refuses(count(100L, false, false, false, 5), "nothing came for 5 s");
        walk.refuses(count(null, false, false, false, 0.1), "no counter");
        walk.refuses(new Reply.Heard(new Recording.Ports(java.util.List.of())), "no count");
    }

    private static Reply count(
            @org.jspecify.annotations.Nullable Long pulses,
            boolean restarted,
            boolean atStart,
            boolean atEnd,
            double gapS) {
        return new Reply.Heard(new Recording.Count(pulses, null, 30, restarted, atStart, atEnd, gapS));
    }

    @Test
    void itSaysHowManyMoreRunsAreNeeded() {
        Walk walk = begun(Optional.empty(), Map.of());
        run(walk, 1, "working", "21.20 kg", 3000);
        run(walk, 2, "", "21.20 kg", 2950);
        run(walk, 3, "", "21.20 kg", 3040);
        Step.More more = (Step.More) walk.guide().step();
        assertThat(more.usual()).isTrue();
        // sd 1.5 %: t · 1.5 / √n <= 1 % from 12 runs on, by the t table; 13 with what the scale adds.
        assertThat(more.words()).matches(".*So far ± 3\\.\\d+ %; about (9|10) more would bring 1 %\\.");
        // Taking fewer is allowed: the limit then is not met.
        Proof proof = walk.answer("runs[4]", "no").proof();
        assertThat(proof.passed()).isFalse();
        assertThat(proof.findings().get(0).limit().name()).isEqualTo("k-uncertainty");
        assertThat(proof.advice()).anyMatch(line -> line.contains("more would bring 1 %"));
    }

    @Test
    void itSaysWhenNoNumberOfRunsIsEnough() {
        Walk walk = new Walk(Prover.FLOW, Optional.empty())
                .answer("measured_by", "jug")
                .answer("accuracy", "0.2 L")
                .answer("step", "0.01 L")
                .answer("liquid_temperature", "14 C");
        for (int i = 1; i <= 3; i++) {
            if (i > 1) {
                walk.answer("runs[" + i + "]", "y");
            }
            String run = "runs[" + i + "].";
            walk.answer(run + "flow", "")
                    .answer(run + "empty", "0 L")
                    .answer(run + "counted", "1500 in 30 s")
                    .answer(run + "full", "10 L");
        }
        assertThat(((Step.More) walk.guide().step()).words()).contains("no number of runs brings 1 %");
    }

    @Test
    void aMeterThatIsNotLinearFailsByNameAndALimitCanBeSet() {
        for (double limit : new double[] {5, 9}) {
            Walk walk = begun(Optional.empty(), Map.of("k-linearity", limit));
            for (int i = 1; i <= 6; i++) {
                run(walk, i, i <= 3 ? "low" : "high", "21.20 kg", i <= 3 ? 2600 : 3000);
            }
            Proof proof = walk.answer("runs[7]", "no").proof();
            // 2600 and 3000 lie 7.1 % off 2800.
            assertThat(proof.findings())
                    .filteredOn(f -> f.limit().name().equals("k-linearity"))
                    .singleElement()
                    .satisfies(f -> assertThat(f.measured()).isCloseTo(7.14, within(0.01)))
                    .satisfies(f -> assertThat(f.met()).isEqualTo(limit > 7.2))
                    .satisfies(f -> assertThat(f.limit().source()).contains("French order of 18 December 2008"));
        }
    }

    @Test
    void goingBackLeavesOutTheLastReply() throws Refusal {
        Walk walk = begun(Optional.empty(), Map.of());
        Guide later = walk.guide().reply(new Reply.Typed("low"));
        assertThat(later.back().step()).isEqualTo(walk.guide().step());
        assertThat(later.back().given()).isEqualTo(walk.guide().given());
        Guide begin = Guide.begin(Prover.FLOW, new Setup(Optional.empty(), Units.METRIC, Map.of()));
        assertThat(begin.back().step()).isEqualTo(begin.step());
    }

    @Test
    void poundsAndGallonsGiveTheSameK() {
        Walk walk = new Walk(Prover.FLOW, Optional.empty(), Units.US, Map.of())
                .answer("measured_by", "scale")
                .answer("accuracy", "0.05 lb")
                .answer("step", "0.02 lb")
                .answer("density", "10.65 lb/gal")
                .answer("density_accuracy", "0.02 lb/gal")
                .answer("liquid_temperature", "57 F");
        for (int i = 1; i <= 3; i++) {
            if (i > 1) {
                walk.answer("runs[" + i + "]", "yes");
            }
            String run = "runs[" + i + "].";
            walk.answer(run + "flow", "")
                    .answer(run + "empty", "0 lb")
                    .answer(run + "counted", "2840 in 30 s")
                    .answer(run + "full", "53.25 lb");
        }
        Proof proof = walk.answer("runs[4]", "no").proof();
        // 53.25 lb of 10.65 lb/gal (UAN 28, Univ. of Nebraska-Lincoln) are 5 gal, 18.927 L, and 0.8 per mille for the
        // air.
        assertThat(proof.result().path("k_factor").path("value_pulses_per_L").asDouble())
                .isCloseTo(2840 / (18.92706 * 1.00079), within(0.01));
        assertThat(proof.lines().get(0)).contains("pulses/US gal");
    }
}
