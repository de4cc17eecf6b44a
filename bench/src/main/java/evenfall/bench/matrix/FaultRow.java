package evenfall.bench.matrix;

import evenfall.bench.score.FaultOutcome;
import evenfall.bench.score.Spread;
import org.jspecify.annotations.Nullable;

/** What became of one fault over all its runs. */
public final class FaultRow {
    private final Tally tally = new Tally();
    private final Spread delaysS = new Spread();
    private int times;
    private int inTime;
    private int late;
    private int missed;
    private int unasked;
    private @Nullable Double withinS;

    void count(Marked run) {
        tally.count(run);
    }

    void count(FaultOutcome outcome) {
        times++;
        switch (outcome.verdict()) {
            case IN_TIME -> inTime++;
            case LATE -> late++;
            case MISSED -> missed++;
            case RAISED_UNASKED -> unasked++;
            case NOT_DUE -> {
                // Nothing to count beside the time itself.
            }
        }
        withinS = outcome.withinS() == null ? withinS : outcome.withinS();
        Double delayS = outcome.delayS();
        if (delayS != null) {
            delaysS.add(delayS);
        }
    }

    /** The runs that it was alone in; none for faults in company. */
    public Tally tally() {
        return tally;
    }

    /** How often it came. */
    public int times() {
        return times;
    }

    /** How often it was due. */
    public int due() {
        return inTime + late + missed;
    }

    public int inTime() {
        return inTime;
    }

    public int late() {
        return late;
    }

    public int missed() {
        return missed;
    }

    /** How often it was due for nothing and raised all the same. */
    public int unasked() {
        return unasked;
    }

    /** How long the monitor had, s; null where it was never due. */
    public @Nullable Double withinS() {
        return withinS;
    }

    /** From when it began to show to the alert, s. */
    public Spread delaysS() {
        return delaysS;
    }

    /** Raised in time over due; null where it was never due. */
    public @Nullable Double share() {
        return due() == 0 ? null : (double) inTime / due();
    }
}
