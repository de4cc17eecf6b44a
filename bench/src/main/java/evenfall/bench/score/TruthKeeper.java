package evenfall.bench.score;

import evenfall.sim.scenario.Scenario;
import evenfall.sim.world.RowLedger;
import evenfall.sim.world.TruthSample;
import evenfall.sim.world.TruthSink;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Keeps of the truth what scoring needs, while the run goes on: an hour of it in a few megabytes. */
final class TruthKeeper implements TruthSink {
    private final TruthReader reader;
    private final Tips tips;
    private final Unseen unseen;
    private final List<TruthMoment> shown = new ArrayList<>();
    private final List<TruthMoment> moments = new ArrayList<>();
    private final List<Course.Moment> course = new ArrayList<>();
    private @Nullable RowLedger ledger;

    TruthKeeper(Scenario scenario) {
        reader = new TruthReader(scenario);
        unseen = Unseen.of(scenario);
        tips = new Tips(scenario.world().fitted().boom(), scenario.belief());
    }

    @Override
    public void heights(long timeUs, double[] heightM) {
        tips.heights(timeUs / 1e6, heightM);
    }

    @Override
    public void sample(TruthSample sample) {
        TruthMoment moment = reader.moment(sample, tips.lowest());
        moments.add(moment);
        shown.add(unseen.shown(sample, moment));
        course.add(reader.along(sample, moment));
    }

    @Override
    public void end(RowLedger finished) {
        ledger = finished;
    }

    List<TruthMoment> moments() {
        return moments;
    }

    /** The same moments as sensors show them that are wrong unseen. */
    List<TruthMoment> shown() {
        return shown;
    }

    Course course() {
        return new Course(course);
    }

    List<Contact> contacts() {
        return tips.contacts();
    }

    RowLedger ledger() {
        if (ledger == null) {
            throw new IllegalStateException("the run has not ended");
        }
        return ledger;
    }
}
