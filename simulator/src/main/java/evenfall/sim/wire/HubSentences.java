package evenfall.sim.wire;

/**
 * The sensor hub's sentences. Ticks are the hub's own microseconds; ticks and counters are unsigned 32-bit numbers that run
 * over.
 */
public final class HubSentences {
    /** Stands for a field that the hub does not know: it stays empty. */
    public static final long UNKNOWN = Long.MIN_VALUE;

    private static final String TALKER = "PEVF";

    private final SentenceWriter writer = new SentenceWriter();

    /**
     * Flow meter: {@code $PEVFQ,<tick>,<count>,<tick of the last edge>}.
     *
     * @param tick when it was sent
     * @param count pulses since the hub was made, running over
     * @param edgeTick tick of the last pulse, or {@link #UNKNOWN} before the first
     */
    public byte[] flow(long tick, long count, long edgeTick) {
        return counter("Q", tick, count, edgeTick);
    }

    /** Wheel: {@code $PEVFW,…}, as {@link #flow}. */
    public byte[] wheel(long tick, long count, long edgeTick) {
        return counter("W", tick, count, edgeTick);
    }

    private byte[] counter(String kind, long tick, long count, long edgeTick) {
        writer.begin(TALKER, kind).whole(tick).whole(count);
        return known(edgeTick).end();
    }

    /**
     * Heights: {@code $PEVFH,<tick>,<echo time, µs>,…}, one field a sensor from the left.
     *
     * @param echoUs echo times, µs, at most seven, {@link #UNKNOWN} where no echo came
     */
    public byte[] heights(long tick, long[] echoUs) {
        writer.begin(TALKER, "H").whole(tick);
        for (long echo : echoUs) {
            known(echo);
        }
        return writer.end();
    }

    /** Pressure transmitter: {@code $PEVFP,<tick>,<loop current, µA>}. */
    public byte[] pressure(long tick, long currentUa) {
        writer.begin(TALKER, "P").whole(tick);
        return known(currentUa).end();
    }

    /** Section switches: {@code $PEVFS,<tick>,<mask in hex>}; bit 0 is the leftmost section, 1 is on. */
    public byte[] sections(long tick, long mask) {
        writer.begin(TALKER, "S").whole(tick);
        if (mask == UNKNOWN) {
            writer.empty();
        } else {
            writer.hex(mask);
        }
        return writer.end();
    }

    /** Air temperature: {@code $PEVFT,<tick>,<hundredths of a degree Celsius>}. */
    public byte[] air(long tick, long centiDegC) {
        writer.begin(TALKER, "T").whole(tick);
        return known(centiDegC).end();
    }

    /** Level gauge in the tank: {@code $PEVFL,<tick>,<its counts>}. */
    public byte[] level(long tick, long counts) {
        writer.begin(TALKER, "L").whole(tick);
        return known(counts).end();
    }

    /** The hub itself: {@code $PEVFI,<tick>,<boots>,<firmware>}. */
    public byte[] hub(long tick, long boots, long firmware) {
        return writer.begin(TALKER, "I")
                .whole(tick)
                .whole(boots)
                .whole(firmware)
                .end();
    }

    private SentenceWriter known(long value) {
        return value == UNKNOWN ? writer.empty() : writer.whole(value);
    }
}
