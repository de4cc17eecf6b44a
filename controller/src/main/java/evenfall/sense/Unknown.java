package evenfall.sense;

/** Why a quantity is not known. The words go into messages as they stand. */
public enum Unknown {
    NOT_FITTED("not fitted"),
    NOT_YET("nothing heard yet"),
    SILENT("silent"),
    NO_FIX("the receiver has no fix"),
    NO_ECHO("no echo"),
    OUT_OF_RANGE("outside what the sensor can measure"),
    STUCK("always the same reading"),
    SCATTERED("readings that jump about"),
    CROSSED("left and right may be changed over"),
    LOOP_BROKEN("the current loop is broken"),
    TOO_FEW_PULSES("too few pulses yet"),
    HUB_RESTARTED("the hub has just restarted"),
    STANDING("slower than walking pace"),
    SECTIONS_OFF("all sections are off"),
    NEEDS_FLOW("flow is not known"),
    NEEDS_SPEED("speed is not known"),
    NEEDS_SECTIONS("section switches are not known"),
    NEEDS_PRESSURE("neither pressure nor flow is known"),
    NEEDS_HEIGHT("too few heights are known"),
    NEEDS_EARLIER_PASS("what an earlier pass put there is not known"),
    OUTLETS_UNLIKE("outlets do not all give the same"),
    NOTHING_FALLS("nothing falls");

    private final String words;

    Unknown(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** Whether the sensor speaks but is not believed. */
    public boolean isDoubt() {
        return this == STUCK || this == SCATTERED || this == CROSSED;
    }
}
