package evenfall.bench.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import evenfall.sim.world.RowLedger;
import evenfall.sim.world.TruthLog;
import evenfall.sim.world.TruthSample;
import evenfall.sim.world.TruthSink;
import evenfall.sim.world.World;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What is taken out of the truth log, against the figures that the log itself computes in other code. */
class TruthReaderTest {
    private static Scenario scenario;
    private static TruthLog log;
    private static List<TruthMoment> moments;

    @BeforeAll
    static void driveOverTheTerraces() throws Exception {
        scenario = Scenarios.find("terrace-crossing");
        log = new TruthLog();
        TruthKeeper keeper = new TruthKeeper(scenario);
        new World(scenario, new Both(log, keeper)).run(emission -> {});
        moments = keeper.moments();
    }

    private record Both(TruthSink one, TruthSink other) implements TruthSink {
        @Override
        public void heights(long timeUs, double[] heightM) {
            one.heights(timeUs, heightM);
            other.heights(timeUs, heightM);
        }

        @Override
        public void sample(TruthSample sample) {
            one.sample(sample);
            other.sample(sample);
        }

        @Override
        public void end(RowLedger ledger) {
            one.end(ledger);
            other.end(ledger);
        }
    }

    @Test
    void aTipIsAsLowAsTheLowestOfTheOuterQuarterHasBeenSinceTheSampleBefore() {
        int lower = 0;
        for (int i = 0; i < moments.size(); i++) {
            TruthSample sample = log.samples().get(i);
            double now = Double.POSITIVE_INFINITY;
            for (int outlet = 0; outlet < 8; outlet++) {
                now = Math.min(now, sample.heightM(outlet));
            }
            assertThat(moments.get(i).heights().leftTipM()).isBetween(-0.2, now);
            lower += moments.get(i).heights().leftTipM() < now ? 1 : 0;
        }
        assertThat(lower).as("often it was lower between two samples").isGreaterThan(moments.size() / 4);
    }

    @Test
    void heightsAtTheSensorsLieBetweenThoseOfTheOutletsBesideThem() {
        for (int i = 0; i < moments.size(); i++) {
            TruthSample sample = log.samples().get(i);
            List<Double> heights = moments.get(i).heights().sensorM();
            assertThat(heights).hasSize(5);
            assertThat(heights.get(2)).isCloseTo(0.5 * (sample.heightM(35) + sample.heightM(36)), within(1e-12));
        }
    }

    @Test
    void thereIsOneMomentForEachSampleOfTheTruth() {
        assertThat(moments).hasSameSizeAs(log.samples()).hasSizeGreaterThan(200);
        for (int i = 0; i < moments.size(); i++) {
            TruthSample sample = log.samples().get(i);
            assertThat(moments.get(i).atS()).isEqualTo(sample.timeUs() / 1e6);
            assertThat(moments.get(i).speedMps()).isEqualTo(sample.speedMps());
        }
    }

    @Test
    void rowsUnderTheWholeBoomAndUnderTheCentreAreThoseOfTheLog() {
        for (int i = 0; i < moments.size(); i++) {
            TruthSample sample = log.samples().get(i);
            assertThat(moments.get(i).boom().rowCv())
                    .as("sample %d", i)
                    .isCloseTo(sample.boom().rows().orElseThrow().rowCv(), within(1e-12));
            TruthSample.Segment centre = sample.segments().get(1);
            assertThat(moments.get(i).centre().rowCv())
                    .as("sample %d", i)
                    .isCloseTo(centre.rows().orElseThrow().rowCv(), within(1e-12));
            assertThat(moments.get(i).rowCv())
                    .isEqualTo(sample.boom().rows().orElseThrow().rowCv());
            assertThat(moments.get(i).heights().leftM())
                    .isCloseTo(sample.segments().get(0).meanHeightM(), within(1e-12));
            assertThat(moments.get(i).heights().rightM())
                    .isCloseTo(sample.segments().get(2).meanHeightM(), within(1e-12));
        }
    }

    @Test
    void theOuterHalfOfAWingLiesBetweenItsLowestAndHighestOutletAndMovesFurtherThanTheWing() {
        double mostOuter = 0;
        double mostWhole = 0;
        for (int i = 0; i < moments.size(); i++) {
            TruthSample.Segment left = log.samples().get(i).segments().get(0);
            assertThat(moments.get(i).leftWingM()).isBetween(left.lowestHeightM(), left.highestHeightM());
            mostOuter = Math.max(mostOuter, Math.abs(moments.get(i).leftWingM() - 0.5));
            mostWhole = Math.max(mostWhole, Math.abs(left.meanHeightM() - 0.5));
        }
        assertThat(mostOuter).isGreaterThan(mostWhole);
    }

    @Test
    void aWingMayTakeTheHeightsThatHoldTheRowsWithinClearanceAndCeiling() throws Exception {
        for (TruthMoment moment : moments) {
            assertThat(moment.lowestM()).isBetween(0.3, 0.45);
            assertThat(moment.highestM()).isBetween(0.65, 0.9);
        }
        Scenario bars = scenario.withOutlet("streamer-bar");
        HeightBands.Band band = new HeightBands(bars.world().fitted(), bars.belief()).at(150_000);
        assertThat(band).isEqualTo(new HeightBands.Band(0.15, 1.2));
    }

    @Test
    void whatTheGroundGotIsThatOfTheLedger() {
        GroundShare ground = GroundShare.of(log.ledger());
        List<Double> cells = new ArrayList<>();
        for (double cv : log.rowCvByCell()) {
            cells.add(cv);
        }
        assertThat(ground.rowCvByCell()).isEqualTo(cells);
        assertThat(ground.below80Share()).isBetween(0.001, 0.2);
        assertThat(ground.above120Share()).isBetween(0.001, 0.2);
    }
}
