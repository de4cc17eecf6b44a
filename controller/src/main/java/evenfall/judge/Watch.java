package evenfall.judge;

import org.jspecify.annotations.Nullable;

/** How to judge one kind of alert at one place, and what to say once it is raised. */
interface Watch {
    Verdict verdict(Situation now);

    /** Called when the alert is raised, so {@link #verdict} has just said OVER of the same moment. */
    Finding finding(Situation now);

    /**
     * What an alert says.
     *
     * @param value number that broke the limit, in the unit; null where there is none
     * @param limit the limit, in the unit; null where there is none
     * @param unit as in {@link Alert}
     * @param why one plain sentence with the number
     * @param act one plain sentence
     */
    record Finding(@Nullable Double value, @Nullable Double limit, String unit, String why, String act) {}
}
