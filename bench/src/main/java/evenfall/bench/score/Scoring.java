package evenfall.bench.score;

import evenfall.bench.received.Report;
import evenfall.sim.scenario.FittedSpec;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.world.TruthSink;

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

    /** After the end of the run. */
    public Score score(Report report) {
        FittedSpec fitted = scenario.world().fitted();
        return new Scorer(
                        new Scorer.Truth(
                                truth.moments(),
                                truth.contacts(),
                                Watched.all(scenario.belief().limits(), fitted.outlet()),
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
}
