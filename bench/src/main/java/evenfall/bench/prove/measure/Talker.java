package evenfall.bench.prove.measure;

/** What talks on a serial line. */
public enum Talker {
    HUB("the sensor hub"),
    RECEIVER("a GNSS receiver"),
    HUB_AND_RECEIVER("the hub and a receiver on one line"),
    UNKNOWN("something that speaks sound sentences, but none that are in use"),
    NOISE("bytes that make no sentence: another baud rate, another device or a bad line"),
    SILENT("nothing: no power, no cable, or it waits to be asked");

    private final String words;

    Talker(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /**
     * @param bytes that came
     * @param fromHub accepted sentences of the hub
     * @param fromReceiver accepted sentences of a receiver
     * @param ignored sound sentences of kinds not in use
     */
    public static Talker of(long bytes, long fromHub, long fromReceiver, long ignored) {
        if (fromHub > 0) {
            return fromReceiver > 0 ? HUB_AND_RECEIVER : HUB;
        }
        if (fromReceiver > 0) {
            return RECEIVER;
        }
        if (ignored > 0) {
            return UNKNOWN;
        }
        return bytes > 0 ? NOISE : SILENT;
    }

    /** Whether sentences came whole, so that the baud rate is right. */
    public boolean speaks() {
        return this != NOISE && this != SILENT;
    }
}
