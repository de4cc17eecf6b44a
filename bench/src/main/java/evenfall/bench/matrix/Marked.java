package evenfall.bench.matrix;

import evenfall.bench.score.FaultOutcome;
import evenfall.bench.score.Figures;
import evenfall.bench.score.Score;
import evenfall.bench.score.ScoredAlert;
import evenfall.bench.score.Scoring;
import evenfall.bench.score.Senses;
import evenfall.sim.scenario.Scenario;
import java.util.List;

/**
 * What is kept of a run until it is counted.
 *
 * @param task what it was
 * @param ground class of the ground; {@code level} where it has none
 * @param seconds how long it was, s
 * @param healthy whether no fault was scripted, nor a wrong meter's factor for the tank to tell
 * @param truth figures of the truth
 * @param reported the same as the monitor said
 * @param alerts due and raised ones
 * @param raised how many the monitor raised
 * @param faults what became of each scripted one
 * @param senses how far each reported quantity was from the truth
 */
record Marked(
        Task task,
        String ground,
        double seconds,
        boolean healthy,
        Figures truth,
        Figures reported,
        List<ScoredAlert> alerts,
        int raised,
        List<FaultOutcome> faults,
        Senses senses) {

    static Marked of(Task task, Scenario scenario, Score score) {
        var roughness = scenario.world().roughness();
        return new Marked(
                task,
                roughness.isPresent() ? roughness.get().toString() : "level",
                scenario.seconds(),
                scenario.world().faults().isEmpty() && !Scoring.isMeterForTank(scenario),
                score.truth(),
                score.reported(),
                score.alerts(),
                score.raised(),
                score.faults(),
                score.senses());
    }
}
