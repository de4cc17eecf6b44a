package evenfall.bench.prove.guide;

/** Leaves a script before its end: a reply is missing, or the last one cannot be used. */
public abstract sealed class Turn extends Exception permits Turn.Wanted, Refusal {
    private static final long serialVersionUID = 1L;

    Turn(String message) {
        super(message, null, false, false);
    }

    /** The replies are used up; this is wanted next. */
    static final class Wanted extends Turn {
        private static final long serialVersionUID = 1L;

        private final transient Step step;

        Wanted(Step step) {
            super("a reply is wanted");
            this.step = step;
        }

        Step step() {
            return step;
        }
    }
}
