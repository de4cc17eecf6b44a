package evenfall.bench.console;

/** A request that is not granted, with its status and one sentence why. */
final class Refusal extends Exception {
    private static final long serialVersionUID = 1L;

    private final int status;

    Refusal(int status, String sentence) {
        super(sentence);
        this.status = status;
    }

    int status() {
        return status;
    }

    String sentence() {
        return String.valueOf(getMessage());
    }
}
