package evenfall.wire;

/** The answer to asking for a field that the sentence left empty. */
final class Absent {

    private Absent() {}

    static IllegalStateException of(String field) {
        return new IllegalStateException("the sentence gives no " + field + "; ask has first");
    }
}
