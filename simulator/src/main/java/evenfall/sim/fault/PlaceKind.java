package evenfall.sim.fault;

/** The ways of saying where a fault is. */
public enum PlaceKind {
    /** The part is there once; nothing is said. */
    NOWHERE("nothing: there is only one"),
    /** An outlet by its number. */
    OUTLET("the number of an outlet, 1 at the left, or a stretch such as 9-12, or all"),
    /** A section by its name. */
    SECTION("the name of a section, 1 at the left"),
    /** A height sensor by its name in the rig. */
    HEIGHT_SENSOR("the name of a height sensor, as in the rig"),
    /** A wing. */
    WING("left or right"),
    /** A wheel. */
    WHEEL("front-left, front-right, rear-left or rear-right"),
    /** A serial port by its name in the rig. */
    PORT("the name of a port, as in the rig");

    private final String words;

    PlaceKind(String words) {
        this.words = words;
    }

    /** What may stand behind {@code where}. */
    public String words() {
        return words;
    }
}
