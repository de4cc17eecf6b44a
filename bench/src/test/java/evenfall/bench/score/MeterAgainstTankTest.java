package evenfall.bench.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.bench.received.Report;
import evenfall.bench.received.WireTally;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import evenfall.sim.world.World;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class MeterAgainstTankTest {
    /** A run of which the monitor said nothing at all. */
    private static List<ScoredAlert> dues(Scenario scenario) {
        Scoring scoring = new Scoring(scenario);
        new World(scenario, scoring.truth()).run(emission -> {});
        return scoring.score(new Report(List.of(), List.of(), WireTally.NONE, 0)).alerts().stream()
                .filter(alert -> alert.kind().equals("sensor-implausible"))
                .toList();
    }

    @Test
    void aWrongFactorIsDueWhenEnoughLitresHaveGone() throws Exception {
        Scenario scenario = Scenarios.find("tank-tells");

        assertThat(dues(scenario)).singleElement().satisfies(due -> {
            assertThat(due.verdict()).isEqualTo(ScoredAlert.Verdict.MISSED);
            // By hand: 165 L/min, seen as 7 % more; d = 1 - 1/1.07 - 3 * sqrt(2) %; (5880 sigma² / (Q d)²)^(1/3), and
            // 20 s.
            double flowLps = 150.0 / 10_000 * 5 * 72 * 0.508 * 1.07;
            double beyond = 1 - 1 / 1.07 - 3 * Math.sqrt(2) / 100;
            double neededS = Math.cbrt(120 * 49 * 160 / Math.pow(flowLps * beyond, 2));
            assertThat(due.dueS()).isCloseTo(neededS + 20, within(12.0));
        });
    }

    @Test
    void aMeterThatIsAsBelievedIsDueForNothing() throws Exception {
        String text;
        try (var in = Scenarios.class.getResourceAsStream("tank-tells.yaml")) {
            text = new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("seconds: 840", "seconds: 60");
        }

        assertThat(dues(Scenarios.written("as-believed", text.replace("pulses_per_L: 160.5", "pulses_per_L: 150"))))
                .isEmpty();
        // 3 % too much is within what meter and table explain.
        assertThat(dues(Scenarios.written("a-little", text.replace("pulses_per_L: 160.5", "pulses_per_L: 154.5"))))
                .isEmpty();
    }
}
