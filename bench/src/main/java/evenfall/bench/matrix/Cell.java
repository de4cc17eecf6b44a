package evenfall.bench.matrix;

import evenfall.bench.score.Figures;
import evenfall.bench.score.Senses;
import evenfall.bench.score.Spread;
import org.jspecify.annotations.Nullable;

/** One scenario, or class of ground, with one outlet type over all seeds. */
public final class Cell {
    private final String name;
    private final String outlet;
    private final String ground;
    private final Tally tally = new Tally();
    private final Spread rowCv = new Spread();
    private final Spread rateError = new Spread();
    private final Mean trueMean = new Mean();
    private final Mean trueP95 = new Mean();
    private final Mean saidMean = new Mean();
    private final Mean saidP95 = new Mean();

    /** A mean of what is known. */
    private static final class Mean {
        private double sum;
        private int count;

        void add(@Nullable Double value) {
            if (value != null) {
                sum += value;
                count++;
            }
        }

        @Nullable
        Double get() {
            return count == 0 ? null : sum / count;
        }
    }

    Cell(String name, String outlet, String ground) {
        this.name = name;
        this.outlet = outlet;
        this.ground = ground;
    }

    void count(Marked run) {
        tally.count(run);
        rowCv.add(run.senses().of(Senses.ROW_CV));
        rateError.add(run.senses().of(Senses.RATE));
        Figures truth = run.truth();
        trueMean.add(truth.rowCvMean());
        trueP95.add(truth.rowCvP95());
        Figures said = run.reported();
        saidMean.add(said.rowCvMean());
        saidP95.add(said.rowCvP95());
    }

    public String name() {
        return name;
    }

    public String outlet() {
        return outlet;
    }

    /** Class of the ground. */
    public String ground() {
        return ground;
    }

    public Tally tally() {
        return tally;
    }

    /** Reported row CV less the true one, percentage points. */
    public Spread rowCvPoints() {
        return rowCv;
    }

    /** Reported rate error less the true one, percentage points. */
    public Spread rateErrorPoints() {
        return rateError;
    }

    /** True mean row CV, a ratio, the mean over the runs; null where nothing fell. */
    public @Nullable Double trueRowCvMean() {
        return trueMean.get();
    }

    /** Its 95th percentile, the mean over the runs. */
    public @Nullable Double trueRowCvP95() {
        return trueP95.get();
    }

    public @Nullable Double saidRowCvMean() {
        return saidMean.get();
    }

    public @Nullable Double saidRowCvP95() {
        return saidP95.get();
    }
}
