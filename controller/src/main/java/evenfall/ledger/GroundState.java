package evenfall.ledger;

/** What a piece of ground got, against the target rate. */
public enum GroundState {
    /** It is not this pass's: the section over it is off. */
    NONE(0),
    /** Not known. */
    NOT_KNOWN(1),
    /** Under 80 %. */
    BELOW(2),
    /** From 80 to 120 %. */
    WITHIN(3),
    /** Over 120 %. */
    ABOVE(4);

    /** Source of the two limits: common practice, no source. */
    private static final double LITTLE = 0.8;

    private static final double MUCH = 1.2;

    private static final GroundState[] BY_CODE = {NONE, NOT_KNOWN, BELOW, WITHIN, ABOVE};

    private final byte code;

    GroundState(int code) {
        this.code = (byte) code;
    }

    /** One byte that stands for it where many are kept. */
    byte code() {
        return code;
    }

    static GroundState ofCode(byte code) {
        return BY_CODE[code];
    }

    static GroundState of(double share) {
        if (share < LITTLE) {
            return BELOW;
        }
        return share > MUCH ? ABOVE : WITHIN;
    }
}
