package evenfall.bench.score;

import org.jspecify.annotations.Nullable;

/**
 * What became of a scripted fault.
 *
 * @param fault its word in the library
 * @param place where it was
 * @param verdict how the monitor took it
 * @param showsS when it began to show, s; null where it was due for nothing
 * @param withinS how long the monitor had from then, s; null as before
 * @param raisedS when the first alert for it rose, s; null where none did
 * @param kind of that alert; null where none rose
 */
public record FaultOutcome(
        String fault,
        String place,
        Verdict verdict,
        @Nullable Double showsS,
        @Nullable Double withinS,
        @Nullable Double raisedS,
        @Nullable String kind) {

    /** How the monitor took a fault. */
    public enum Verdict {
        /** Raised in time. */
        IN_TIME,
        /** Raised, but late. */
        LATE,
        /** Due and never raised. */
        MISSED,
        /** Due for nothing, for its size, its place or its time; raised all the same. */
        RAISED_UNASKED,
        /** Due for nothing, and nothing was raised. */
        NOT_DUE;

        /** Whether it was due. */
        public boolean isDue() {
            return this == IN_TIME || this == LATE || this == MISSED;
        }
    }

    /** From when it began to show to the alert, s; null where one of the two is not there. */
    public @Nullable Double delayS() {
        return showsS == null || raisedS == null ? null : Math.max(0, raisedS - showsS);
    }
}
