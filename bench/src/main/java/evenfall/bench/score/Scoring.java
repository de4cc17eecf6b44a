package evenfall.bench.score;

import evenfall.bench.received.Report;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.world.TruthLog;
import evenfall.sim.world.TruthSink;

/** The door: the sealed truth of a run and what the monitor said go in, the score comes out. */
public final class Scoring {
    private final Scenario scenario;
    private final TruthLog truth = new TruthLog();

    public Scoring(Scenario scenario) {
        this.scenario = scenario;
    }

    /** Where the simulator puts the truth while the run goes on. Nobody else reads it. */
    public TruthSink truth() {
        return truth;
    }

    /** After the end of the run. */
    public Score score(Report report) {
        return new Scorer(
                        scenario.belief().limits(),
                        new TruthReader(scenario).moments(truth),
                        GroundShare.of(truth.ledger()),
                        FaultDue.of(scenario.world().faults()),
                        report)
                .score();
    }
}
