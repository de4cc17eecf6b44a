package evenfall.bench.run;

import evenfall.bench.received.Report;
import evenfall.bench.score.Course;
import evenfall.bench.score.Figures;
import evenfall.bench.score.GroundMap;
import evenfall.bench.score.ScoredAlert;
import evenfall.rig.Rig;
import evenfall.sim.scenario.Scenario;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A run as it is shown to people: fresh, or read from the folder in which it was kept.
 *
 * @param scenario its name
 * @param title of the scenario, one line
 * @param notes what there is to see; may be empty
 * @param seed of its random streams
 * @param seconds how long it lasted, s
 * @param pace how it was driven
 * @param rig the machine as the monitor believed it to be
 * @param truth figures of the truth
 * @param reported the same figures by the monitor's messages
 * @param below80Share share of all row cells that got less than 80 % of their cell's mean, a ratio; null where nothing fell
 * @param above120Share share of those that got more than 120 %; null where nothing fell
 * @param alerts due and raised ones, by time
 * @param course the truth along the way
 * @param ground what each row got in truth
 * @param report what the monitor said
 * @param remarks what a person should know; often none
 */
public record RunRecord(
        String scenario,
        String title,
        String notes,
        long seed,
        double seconds,
        Pace pace,
        Rig rig,
        Figures truth,
        Figures reported,
        @Nullable Double below80Share,
        @Nullable Double above120Share,
        List<ScoredAlert> alerts,
        Course course,
        GroundMap ground,
        Report report,
        List<String> remarks) {

    public RunRecord {
        alerts = List.copyOf(alerts);
        remarks = List.copyOf(remarks);
    }

    /** Of a run that has just ended. */
    public static RunRecord of(RunResult result, Scenario scenario) {
        return new RunRecord(
                result.scenario(),
                result.title(),
                scenario.notes(),
                result.seed(),
                result.seconds(),
                result.pace(),
                scenario.belief(),
                result.score().truth(),
                result.score().reported(),
                result.score().ground().below80Share(),
                result.score().ground().above120Share(),
                result.score().alerts(),
                result.course(),
                result.score().ground().map(),
                result.report(),
                result.remarks());
    }

    /** How far the run went, m. */
    public double lengthM() {
        List<Course.Moment> moments = course.moments();
        return moments.isEmpty() ? 0 : moments.get(moments.size() - 1).atM();
    }
}
