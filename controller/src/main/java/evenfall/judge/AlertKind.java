package evenfall.judge;

/** What can be wrong. The words are those of topics and files. */
public enum AlertKind {
    RATE_HIGH("rate-high"),
    RATE_LOW("rate-low"),
    WING_LOW("wing-low"),
    WING_HIGH("wing-high"),
    BANDS_GAPPED("bands-gapped"),
    BANDS_DOUBLED("bands-doubled"),
    SENSOR_SILENT("sensor-silent"),
    SPEED_LOST("speed-lost");

    private final String word;

    AlertKind(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
