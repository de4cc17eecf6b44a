package evenfall.bench.run;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.bench.compare.CompareJson;
import evenfall.bench.compare.CompareText;
import evenfall.bench.compare.Comparison;
import evenfall.bench.received.Message;
import evenfall.bench.report.Paint;
import evenfall.bench.score.ScoredAlert;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class QuickRunTest {
    private static final Runner.Watcher NOBODY = new Runner.Watcher() {
        @Override
        public void preparing(String what) {}

        @Override
        public void driving(double atS) {}

        @Override
        public void heard(Message message) {}
    };

    @TempDir
    Path folder;

    private Scenario scenario;

    @BeforeEach
    void writeScenario() throws Exception {
        Path file = folder.resolve("short-terrace.yaml");
        try (InputStream in = QuickRunTest.class.getResourceAsStream("/evenfall/bench/short-terrace.yaml")) {
            Files.write(file, in.readAllBytes());
        }
        scenario = Scenarios.find(file.toString());
    }

    private static RunResult run(Scenario scenario) throws Exception {
        return Runner.run(scenario, Runner.Options.QUICK, NOBODY);
    }

    @Test
    void theSameSeedGivesTheSameMessagesAndScoreAndAnotherSeedOthers() throws Exception {
        RunResult one = run(scenario);
        RunResult again = run(scenario);
        RunResult other = run(scenario.withSeed(99));
        assertThat(again.digest()).isEqualTo(one.digest());
        assertThat(RunJson.of(again)).isEqualTo(RunJson.of(one));
        assertThat(other.digest()).isNotEqualTo(one.digest());
    }

    @Test
    void aTerraceIsSeenOnBothSidesOfTheTruth() throws Exception {
        RunResult result = run(scenario);
        assertThat(result.score().alerts())
                .filteredOn(alert -> alert.verdict() == ScoredAlert.Verdict.RIGHT)
                .extracting(ScoredAlert::kind)
                .contains("wing-low");
        assertThat(result.score().missed()).isZero();
        assertThat(result.score().falseAlerts()).isZero();
        assertThat(result.score().truth().rowCvP95()).isGreaterThan(0.15);
        assertThat(result.report().wire().rejected()).isZero();
        assertThat(result.report().wire().sentences()).isGreaterThan(500);
    }

    @Test
    void barsRideOverTheTerraceThatThreeStreamsDoNot() throws Exception {
        RunResult three = run(scenario.withOutlet("three-stream"));
        RunResult bar = run(scenario.withOutlet("streamer-bar"));
        assertThat(three.outlet()).isEqualTo("three-stream");
        assertThat(bar.score().truth().rowCvMean())
                .isLessThan(three.score().truth().rowCvMean());
        assertThat(bar.score().ground().below80Share())
                .isLessThan(three.score().ground().below80Share());
        Comparison comparison = new Comparison(List.of(three, bar));
        assertThat(CompareJson.of(comparison).get("outlets")).hasSize(2);
        assertThat(String.join("\n", new CompareText(Paint.OFF, 100).lines(comparison)))
                .contains("three-stream", "streamer-bar");
    }

    @Test
    void whatIsKeptIsEnoughToRepeatTheRun() throws Exception {
        Path keep = folder.resolve("kept");
        RunResult result =
                Runner.run(scenario, new Runner.Options(Pace.MAX, Optional.empty(), Optional.of(keep)), NOBODY);
        assertThat(keep.resolve("rig.yaml")).exists();
        assertThat(keep.resolve("trace.txt.gz")).exists();
        assertThat(Files.readAllLines(keep.resolve("messages.txt")))
                .hasSizeGreaterThanOrEqualTo(result.report().moments().size());
    }

    @Test
    void theResultForPeopleSaysTruthMonitorAndWhatToDo() throws Exception {
        assertThat(String.join("\n", new RunText(Paint.OFF).lines(run(scenario))))
                .contains("truth", "monitor", "wing-low", "  true ", "the driver read", "missed 0, false 0");
    }
}
