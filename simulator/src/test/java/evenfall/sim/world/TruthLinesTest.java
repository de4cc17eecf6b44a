package evenfall.sim.world;

import static evenfall.sim.world.TestScenarios.edit;
import static evenfall.sim.world.TestScenarios.frozen;
import static evenfall.sim.world.TestScenarios.scenario;
import static evenfall.sim.world.TestScenarios.truth;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.config.ConfigException;
import evenfall.pattern.LineMeasures;
import evenfall.pattern.StaticPattern;
import evenfall.rig.BoomLayout;
import evenfall.sim.scenario.FittedSpec;
import evenfall.sim.scenario.Scenario;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How the lines of the truth lie, on a boom that does not move, against the desk's own code for lines. */
class TruthLinesTest {
    @ParameterizedTest(name = "{0} at {1} m")
    @CsvSource({
        "three-stream, 0.30",
        "three-stream, 0.50",
        "five-stream, 0.25",
        "five-stream, 0.50",
        "streamer-bar, 0.5"
    })
    void gapsAndDoubledLinesAreThoseOfTheDesk(String outlet, double heightM) throws ConfigException {
        // Nothing moves: the last of five seconds is as good as of thirty.
        Scenario level = scenario(edit(
                        frozen(),
                        "seconds: 30",
                        "seconds: 5",
                        "boom: rigid",
                        "boom: rigid\n    boom_height_m: " + heightM))
                .withOutlet(outlet);
        List<TruthSample> samples = truth(level).samples();
        TruthSample sample = samples.get(samples.size() - 1);
        FittedSpec fitted = level.world().fitted();
        BoomLayout boom = fitted.boom();
        LineMeasures desk = StaticPattern.of(
                        fitted.outlet(),
                        new StaticPattern.Layout(boom.outlets(), boom.spacingM(), boom.rowM(), boom.rowPhase()),
                        sample.boom().meanHeightM(),
                        sample.pressurePa(),
                        fitted.specificGravity())
                .lineMeasures();
        LineFigures lines = sample.boom().lines();
        assertThat(lines.lines())
                .isEqualTo(boom.outlets() * fitted.outlet().streams().size());
        assertThat(lines.widestGapM())
                .as("but for the gaps at the ends, where the neighbour's lines are missing")
                .isCloseTo(desk.widestGapM(), within(3e-3));
        assertThat(lines.doubledM3ps() / lines.flowM3ps())
                .as("but for the outlets at the ends, which have one neighbour only")
                .isCloseTo(desk.doubledShare(), within(2.0 / boom.outlets()));
        double flow = 0;
        double doubled = 0;
        for (TruthSample.Segment segment : sample.segments()) {
            flow += segment.lines().flowM3ps();
            doubled += segment.lines().doubledM3ps();
        }
        assertThat(flow).isCloseTo(lines.flowM3ps(), within(1e-12));
        assertThat(doubled).isCloseTo(lines.doubledM3ps(), within(1e-12));
        assertThat(lines.flowM3ps()).isCloseTo(sample.flowM3ps(), within(1e-3 * sample.flowM3ps()));
    }

    @Test
    void anOutletThatGivesNothingLeavesAGapOfItsWidth() {
        Scenario blocked = scenario(edit(
                frozen(),
                "  air_C: 12\n",
                "  air_C: 12\n  faults:\n    - {fault: outlet-blocked, at_s: 10, where: 17, how_much: 1}\n"));
        double spacingM = blocked.world().fitted().boom().spacingM();
        List<TruthSample> samples = truth(blocked).samples();
        double before = samples.get(40).boom().lines().widestGapM();
        double after = samples.get(100).boom().lines().widestGapM();
        assertThat(before).isLessThan(spacingM / 2);
        assertThat(after).isGreaterThan(spacingM / 2);
    }

    @Test
    void whatPassesTheMeterAndWhatIsOnIsTold() {
        Scenario leaking = scenario(edit(
                frozen(),
                "  air_C: 12\n",
                "  air_C: 12\n  sections: [{at_s: 20, on: [1, 2, 3]}]\n  faults:\n"
                        + "    - {fault: line-leaking, at_s: 10, how_much: 10}\n"));
        List<TruthSample> samples = truth(leaking).samples();
        TruthSample whole = samples.get(45);
        TruthSample leaks = samples.get(95);
        TruthSample half = samples.get(145);
        assertThat(whole.meterM3ps()).isCloseTo(whole.flowM3ps(), within(1e-3 * whole.flowM3ps()));
        assertThat(leaks.meterM3ps() - leaks.flowM3ps())
                .as("10 L/min at 200 kPa, by the root of the pressure")
                .isCloseTo(10.0 / 60_000 * Math.sqrt(leaks.feedPressurePa() / 200_000), within(2e-6));
        assertThat(whole.sectionMask()).isEqualTo(0b111111);
        assertThat(half.sectionMask()).isEqualTo(0b000111);
    }

    @Test
    void heightsAreToldFiftyTimesASecondAndThoseOfASampleAreItsOwn() throws ConfigException {
        long[] told = new long[1];
        double[] last = new double[1];
        new World(TestScenarios.scenario(TestScenarios.builtIn("level-field")), new TruthSink() {
                    @Override
                    public void heights(long timeUs, double[] heightM) {
                        told[0]++;
                        last[0] = heightM[0];
                    }

                    @Override
                    public void sample(TruthSample sample) {
                        assertThat(sample.heightM(0)).isEqualTo(last[0]);
                    }

                    @Override
                    public void end(RowLedger ledger) {
                        assertThat(told[0]).isEqualTo(30 * 50);
                    }
                })
                .run(emission -> {});
        assertThat(told[0]).isPositive();
    }
}
