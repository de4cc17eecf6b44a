package evenfall.bench.score;

import evenfall.bench.received.Report;
import evenfall.sim.scenario.FittedSpec;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.world.TruthSink;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** The door: the sealed truth of a run and what the monitor said go in, the score comes out. */
public final class Scoring {
    private final Scenario scenario;
    private final TruthKeeper truth;

    public Scoring(Scenario scenario) {
        this.scenario = scenario;
        this.truth = new TruthKeeper(scenario);
    }

    /** Where the simulator puts the truth while the run goes on. Nobody else reads it. */
    public TruthSink truth() {
        return truth;
    }

    /** The truth along the way, after the end of the run. */
    public Course course() {
        return truth.course();
    }

    private List<Watched> watched(FittedSpec fitted) {
        List<Watched> watched = new ArrayList<>(Watched.all(scenario.belief().limits(), fitted.outlet()));
        MeterAgainstTank.of(scenario, truth.moments()).ifPresent(watched::add);
        return watched;
    }

    /** After the end of the run. */
    public Score score(Report report) {
        FittedSpec fitted = scenario.world().fitted();
        return new Scorer(
                        new Scorer.Truth(
                                truth.moments(),
                                truth.shown(),
                                truth.contacts(),
                                watched(fitted),
                                FaultDue.of(scenario),
                                Blinding.of(scenario),
                                scenario.belief().limits().clearanceM(),
                                fitted.heights().stream()
                                        .map(FittedSpec.Height::name)
                                        .toList()),
                        GroundShare.of(truth.ledger()),
                        report)
                .score();
    }

    /** Whether the flow meter does not give what the rig file says and a tank gauge is there to tell of it: as good as a scripted fault. */
    public static boolean isMeterForTank(Scenario scenario) {
        OptionalDouble gives = scenario.world().fitted().pulsesPerM3();
        return scenario.belief().sensors().tank().isPresent()
                && scenario.belief()
                        .sensors()
                        .flow()
                        .filter(flow -> !gives.equals(OptionalDouble.of(flow.pulsesPerM3())))
                        .isPresent();
    }
}
