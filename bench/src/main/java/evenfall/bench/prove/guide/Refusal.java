package evenfall.bench.prove.guide;

/** A reply that cannot be used; the guide stays where it was. */
public final class Refusal extends Turn {
    private static final long serialVersionUID = 1L;

    private final String wrong;
    private final String allowed;

    /**
     * @param wrong what is wrong, as half a sentence
     * @param allowed what would be right
     */
    public Refusal(String wrong, String allowed) {
        super(wrong + "; allowed: " + allowed);
        this.wrong = wrong;
        this.allowed = allowed;
    }

    public String wrong() {
        return wrong;
    }

    public String allowed() {
        return allowed;
    }
}
