package evenfall.bench.run;

import evenfall.bench.received.Report;
import evenfall.bench.score.Course;
import evenfall.bench.score.Score;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A run that is over.
 *
 * @param scenario its name
 * @param title of the scenario, one line
 * @param seed of its random streams
 * @param seconds how long it lasted, s
 * @param outlet id of the outlet type
 * @param pace how it was driven
 * @param score the truth beside the report
 * @param course the truth along the way
 * @param report what the monitor said
 * @param digest SHA-256 of all messages at pace max; null at real pace, where they depend on arrival
 * @param times where the time went, in order
 * @param remarks what a person should know beside the score; often none
 */
public record RunResult(
        String scenario,
        String title,
        long seed,
        double seconds,
        String outlet,
        Pace pace,
        Score score,
        Course course,
        Report report,
        @Nullable String digest,
        List<Time> times,
        List<String> remarks) {

    public RunResult {
        times = List.copyOf(times);
        remarks = List.copyOf(remarks);
    }

    /**
     * @param what as words
     * @param seconds s
     */
    public record Time(String what, double seconds) {}
}
