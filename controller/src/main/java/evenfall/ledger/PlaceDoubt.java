package evenfall.ledger;

/** Why passes are not laid beside one another. The words go into messages as they stand. */
public enum PlaceDoubt {
    NO_PLACE("the position is not known"),
    TOO_COARSE("the fix is too coarse for rows; see overlap_from in the rig file");

    private final String words;

    PlaceDoubt(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
