package evenfall.bench.matrix;

/** What a run is for. */
public enum Group {
    /** A scenario that comes with the program, or a file. */
    SCENARIOS("scenarios"),
    /** One fault alone, on ground that leaves it alone. */
    FAULTS("faults, each alone"),
    /** Nothing wrong, on ground of a class. */
    GROUND("ground"),
    /** Hours of work with nothing wrong. */
    CLEAN("clean hours");

    private final String words;

    Group(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
