package evenfall.sim.fault;

/** Parts of a machine that a fault can touch. */
public enum Part {
    OUTLETS("outlets"),
    PLUMBING("plumbing"),
    RATE_CONTROL("rate control"),
    FLOW_METER("flow meter"),
    HEIGHT_SENSORS("height sensors"),
    PRESSURE("pressure transmitter"),
    AIR("air thermometer"),
    SWITCHES("section switches"),
    WHEEL("wheel sensor"),
    HUB("sensor hub"),
    CABLES("cables"),
    GNSS("GNSS receiver"),
    BOOM("boom"),
    CHASSIS("chassis");

    private final String words;

    Part(String words) {
        this.words = words;
    }

    /** For people. */
    public String words() {
        return words;
    }
}
