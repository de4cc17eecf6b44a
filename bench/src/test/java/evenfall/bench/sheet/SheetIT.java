package evenfall.bench.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenfall.bench.received.ReportedMoment;
import evenfall.bench.run.KeptRun;
import evenfall.bench.run.Pace;
import evenfall.bench.run.RunRecord;
import evenfall.bench.run.RunResult;
import evenfall.bench.run.Runner;
import evenfall.bench.score.Course;
import evenfall.config.ConfigException;
import evenfall.quantity.Units;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One run over terraces, kept, read again and shown. */
class SheetIT {
    @TempDir
    static Path folder;

    private static RunRecord run;

    @BeforeAll
    static void drive() throws Exception {
        Scenario scenario = Scenarios.find("terrace-crossing");
        RunResult result =
                Runner.run(scenario, new Runner.Options(Pace.MAX, Optional.empty(), Optional.of(folder)), new Silent());
        run = RunRecord.of(result, scenario);
        KeptRun.addTruth(folder, run);
    }

    private static final class Silent implements Runner.Watcher {
        @Override
        public void preparing(String what) {
            // Nobody watches.
        }

        @Override
        public void driving(double atS) {
            // Nobody watches.
        }

        @Override
        public void heard(evenfall.bench.received.Message message) {
            // Nobody watches.
        }
    }

    @Test
    void whatWasKeptIsWhatWasRun() throws Exception {
        RunRecord kept = KeptRun.read(folder);
        assertThat(kept.report()).isEqualTo(run.report());
        assertThat(kept.title()).isEqualTo(run.title());
        assertThat(kept.rig().limits()).isEqualTo(run.rig().limits());
        assertThat(kept.alerts()).hasSameSizeAs(run.alerts());
        for (int i = 0; i < kept.alerts().size(); i++) {
            assertThat(kept.alerts().get(i).verdict())
                    .isEqualTo(run.alerts().get(i).verdict());
        }
        assertThat(kept.course().moments()).hasSameSizeAs(run.course().moments());
        for (int i = 0; i < kept.course().moments().size(); i++) {
            Course.Moment one = kept.course().moments().get(i);
            Course.Moment other = run.course().moments().get(i);
            assertThat(one.leftTipM()).isCloseTo(other.leftTipM(), within(1e-4));
            assertThat(one.atM()).isCloseTo(other.atM(), within(1e-3));
            assertThat(one.rowCv() == null).isEqualTo(other.rowCv() == null);
        }
        assertThat(kept.ground().cells()).isEqualTo(run.ground().cells());
        assertThat(kept.ground().share(40, 11)).isCloseTo(run.ground().share(40, 11), within(1e-3));
    }

    /** Drawn twice on the same axes, from the run and from its folder, a line may differ by the rounding of the file alone. */
    @Test
    void aPageFromTheFolderShowsTheSameFigures() throws Exception {
        String fresh = new RunSheet(run, Units.METRIC).html();
        String kept = new RunSheet(KeptRun.read(folder), Units.METRIC).html();
        assertThat(fresh.replaceAll("<svg.*?</svg>", "")).isEqualTo(kept.replaceAll("<svg.*?</svg>", ""));
    }

    /**
     * The map is drawn anew from heights and pressure; the row CV in the messages was computed on the board from the same, with the
     * motion of the heights on top. On most of the pass, where the boom hardly moves, the two must agree.
     */
    @Test
    void theReportedMapIsAsUnevenAsTheMonitorSaid() {
        ReportedMap map = ReportedMap.of(run);
        Way way = new Way(run.course());
        List<Double> apart = new ArrayList<>();
        for (ReportedMoment moment : run.report().moments()) {
            int cell = (int) Math.floor((way.atM(moment.atS()) - run.ground().cellFromM(0)) / 2);
            if (moment.rowCv() == null || cell < 0 || cell >= run.ground().cells()) {
                continue;
            }
            apart.add(Math.abs(rowCv(map, cell) - moment.rowCv()));
        }
        apart.sort(null);
        assertThat(apart).hasSizeGreaterThan(150);
        assertThat(apart.get(apart.size() / 2)).isLessThan(0.01);
    }

    private static double rowCv(ReportedMap map, int cell) {
        int rows = run.ground().rows();
        double sum = 0;
        double squares = 0;
        for (int row = 0; row < rows; row++) {
            Double share = map.share(cell, row);
            assertThat(share).isNotNull();
            sum += share == null ? 0 : share;
        }
        for (int row = 0; row < rows; row++) {
            Double share = map.share(cell, row);
            double off = (share == null ? 0 : share) - sum / rows;
            squares += off * off;
        }
        return Math.sqrt(squares / (rows - 1)) / (sum / rows);
    }

    @Test
    void aPageSaysWhatIsInventedWhichLimitsApplyAndTheCautions() {
        for (Units units : Units.values()) {
            for (Sheet sheet : List.of(
                    new RunSheet(run, units),
                    new PairSheet(run, run, units),
                    new ComparisonSheet(List.of(run), units))) {
                assertThat(sheet.html().replaceAll("data:image[^\"]*", ""))
                        .contains("are invented", "Limits of the rig file", "Relieve the pressure", "Row")
                        .doesNotContain("NaN", "null", "Infinity", "<script");
            }
        }
    }

    @Test
    void unitsArePeoplesOwn() {
        String us = new RunSheet(run, Units.US).html();
        assertThat(us)
                .contains("distance along the pass, ft", "height, in", "US gal/ac")
                .doesNotContain("L/ha", "height, m");
        String metric = new RunSheet(run, Units.METRIC).html();
        assertThat(metric)
                .contains("distance along the pass, m", "height, m", "L/ha")
                .doesNotContain("US gal/ac", "pass, ft");
    }

    @Test
    void picturesHaveNamesOfTheirOwn() {
        for (Sheet sheet : List.of(new RunSheet(run, Units.METRIC), new PairSheet(run, run, Units.METRIC))) {
            assertThat(sheet.pictures().stream().map(picture -> picture.name()).toList())
                    .doesNotHaveDuplicates()
                    .hasSizeGreaterThan(8);
        }
    }

    @Test
    void whatIsNoKeptRunIsRefusedInALine() throws Exception {
        assertThatThrownBy(() -> KeptRun.read(folder.resolve("nowhere")))
                .isInstanceOf(ConfigException.class)
                .hasMessageContaining("no such folder");
        Path half = Files.createDirectory(folder.resolve("half"));
        Files.copy(folder.resolve("rig.yaml"), half.resolve("rig.yaml"));
        Files.copy(folder.resolve("messages.txt"), half.resolve("messages.txt"));
        assertThatThrownBy(() -> KeptRun.read(half))
                .isInstanceOf(ConfigException.class)
                .hasMessageContaining("truth.json.gz");
        byte[] whole = Files.readAllBytes(folder.resolve("truth.json.gz"));
        for (int length : new int[] {0, 10, whole.length / 2, whole.length - 9}) {
            Files.write(half.resolve("truth.json.gz"), java.util.Arrays.copyOf(whole, length));
            assertThatThrownBy(() -> KeptRun.read(half)).isInstanceOf(ConfigException.class);
        }
        Files.write(half.resolve("truth.json.gz"), whole);
        Files.writeString(half.resolve("messages.txt"), "12 evenfall/x/live {\nno message\n");
        assertThatThrownBy(() -> KeptRun.read(half)).isInstanceOf(ConfigException.class);
    }

    @Test
    void aProofIsShownWithItsLimitsAndWhatItLacksIsNotKnown() throws Exception {
        Path file = folder.resolve("proof.json");
        Files.writeString(
                file,
                "{\"prove\": \"flow\", \"rig\": null, \"at_utc\": \"2026-04-02T08:00:00\", \"simulated\": true, \"trial_seed\": 9, \"passed\": false, \"findings\": ["
                        + "{\"limit\": \"repeat\", \"title\": \"runs apart\", \"measured_pct\": 1.4, \"at_most_pct\": 1, \"met\":"
                        + " false, \"source\": \"choice\"}], \"constants\": [{\"of\": \"flow meter\", \"pulses_per_L\": 151.23456,"
                        + " \"expanded_uncertainty_pulses_per_L\": 0.8962, \"rig_place\": \"sensors.flow\"}], \"advice\": [\"Run"
                        + " again.\"], \"method\": []}");
        String html = ProofSheet.read(file).html();
        assertThat(html)
                .contains(
                        "Not passed",
                        "runs apart",
                        "1.4 %",
                        "NO",
                        "151.23 pulses per L",
                        "0.90",
                        "Machine not known",
                        "seed 9",
                        "Run again.");
        Files.writeString(file, "{\"scenario\": 1}");
        assertThatThrownBy(() -> ProofSheet.read(file)).isInstanceOf(ConfigException.class);
        Files.writeString(file, "{");
        assertThatThrownBy(() -> ProofSheet.read(file)).isInstanceOf(ConfigException.class);
    }
}
