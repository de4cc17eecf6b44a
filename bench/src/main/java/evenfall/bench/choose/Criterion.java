package evenfall.bench.choose;

/** What outlets are ranked by. */
public enum Criterion {
    COST("cost"),
    TOLERANCE("tolerance"),
    SETS("sets"),
    CONTACT("contact"),
    HANDLING("handling");

    private final String word;

    Criterion(String word) {
        this.word = word;
    }

    /** As on the command line and in JSON. */
    public String word() {
        return word;
    }
}
