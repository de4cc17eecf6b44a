package evenfall.bench.workbench;

/** A request that is not granted, with its HTTP status and one sentence why. */
final class Declined extends Exception {
    private static final long serialVersionUID = 1L;

    private final int status;

    Declined(int status, String sentence) {
        super(sentence, null, false, false);
        this.status = status;
    }

    int status() {
        return status;
    }
}
