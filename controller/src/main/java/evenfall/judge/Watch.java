package evenfall.judge;

import org.jspecify.annotations.Nullable;

/** One kind of alert at one place: how to judge it, and what to say once it is raised. */
interface Watch {
    AlertKind kind();

    String place();

    Verdict verdict(Situation now);

    /** Called when the alert is raised, so {@link #verdict} has just said OVER of the same moment. */
    Finding finding(Situation now);

    /**
     * What an alert says.
     *
     * @param value number that broke the limit, in the unit; null where there is none
     * @param limit the limit, in the unit
     * @param unit {@code %}, {@code m} or {@code s}
     * @param why one plain sentence with the number
     * @param act one plain sentence
     */
    record Finding(@Nullable Double value, double limit, String unit, String why, String act) {}
}
