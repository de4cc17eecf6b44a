package evenfall.bench.score;

import evenfall.bench.received.ReportedAlert;
import org.jspecify.annotations.Nullable;

/**
 * A line of the score: an alert that was due, that was raised, or both.
 *
 * @param kind the contract's word
 * @param place where
 * @param dueS when it was due, s; null where it was not
 * @param raised what the monitor said; null where it said nothing
 * @param verdict how the two stand to each other
 * @param rightCause for uneven bands whether lines in truth did what the alert's kind says; null where it does not apply or the lines
 *     do not tell
 */
public record ScoredAlert(
        String kind,
        String place,
        @Nullable Double dueS,
        @Nullable ReportedAlert raised,
        Verdict verdict,
        @Nullable Boolean rightCause) {

    /** How what was due and what was raised stand to each other. */
    public enum Verdict {
        /** Due and raised in time. */
        RIGHT,
        /** Due, and raised too late to be of use, or not at all. */
        MISSED,
        /** Due by the truth, and not raised in time while a scripted fault had what it rests on out of order. */
        BLINDED,
        /** A tip struck so quickly that nobody could have warned, and nobody had. */
        TOO_QUICK,
        /** Raised where the truth was not even near the limit. */
        FALSE,
        /** Raised, or due and not raised, by what sensors showed that were wrong in a way that no sensor fitted could tell. */
        MISLED,
        /** Raised on a near miss, or on an exceedance too short for its hold. */
        NEAR_MISS
    }

    public @Nullable Double raisedS() {
        return raised == null ? null : raised.raisedS();
    }

    public @Nullable Double clearedS() {
        return raised == null ? null : raised.clearedS();
    }

    /** From due to raised, s; negative where it stood before it was due; null where it lacks either. */
    public @Nullable Double delayS() {
        return dueS == null || raised == null ? null : raised.raisedS() - dueS;
    }

    /** When it first mattered, for putting lines in order, s. */
    double firstS() {
        double dueAt = dueS == null ? Double.POSITIVE_INFINITY : dueS;
        double raisedAt = raised == null ? Double.POSITIVE_INFINITY : raised.raisedS();
        return Math.min(dueAt, raisedAt);
    }
}
