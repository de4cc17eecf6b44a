package evenfall.bench.prove.guide;

/** What a person typed or an instrument heard. */
public sealed interface Reply {
    /**
     * @param text as typed; empty takes the usual answer where there is one
     */
    record Typed(String text) implements Reply {}

    /**
     * @param recording of the kind that the step wants
     */
    record Heard(Recording recording) implements Reply {}
}
