package evenfall.judge;

/**
 * What can be wrong. The words are those of topics and files; the priority says which of two alerts a driver should read first.
 *
 * <p>Few stand at the top, as IEC 62682 and ISA-18.2 ask of alarms (their priorities from memory): only what breaks a boom or wastes a pass
 * within seconds is {@link Priority#HIGH}.
 */
public enum AlertKind {
    STRIKE_AHEAD("strike-ahead", Priority.HIGH),
    TRAVEL_WITHOUT_FLOW("travel-without-flow", Priority.HIGH),
    RATE_HIGH("rate-high", Priority.MEDIUM),
    RATE_LOW("rate-low", Priority.MEDIUM),
    WING_LOW("wing-low", Priority.MEDIUM),
    WING_HIGH("wing-high", Priority.MEDIUM),
    BANDS_GAPPED("bands-gapped", Priority.MEDIUM),
    BANDS_DOUBLED("bands-doubled", Priority.MEDIUM),
    OUTLET_BLOCKED("outlet-blocked", Priority.MEDIUM),
    OUTLET_OPEN("outlet-open", Priority.MEDIUM),
    FLOW_WITHOUT_TRAVEL("flow-without-travel", Priority.MEDIUM),
    PRESSURE_OUTSIDE("pressure-outside", Priority.LOW),
    SPEED_LOST("speed-lost", Priority.LOW),
    SENSOR_SILENT("sensor-silent", Priority.LOW),
    SENSOR_IMPLAUSIBLE("sensor-implausible", Priority.LOW),
    HUB_RESTARTED("hub-restarted", Priority.LOW);

    /** How soon a driver has to do something. */
    public enum Priority {
        /** Now: the boom or the pass is lost otherwise. */
        HIGH("high"),
        /** On this pass. */
        MEDIUM("medium"),
        /** At the next stop; until then something is not known, or not as it should be. */
        LOW("low");

        private final String word;

        Priority(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    private final String word;
    private final Priority priority;

    AlertKind(String word, Priority priority) {
        this.word = word;
        this.priority = priority;
    }

    /** As topics and files write it. */
    public String word() {
        return word;
    }

    /** Which of two alerts is read first. */
    public Priority priority() {
        return priority;
    }
}
