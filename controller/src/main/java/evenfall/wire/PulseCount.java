package evenfall.wire;

/** A pulse counter and the tick of its last edge: enough to count reciprocally at any rate of reading. */
public abstract sealed class PulseCount extends HubSentence permits FlowPulses, WheelPulses {

    private long count;
    private boolean hasLastEdge;
    private long lastEdgeTickUs;

    PulseCount() {}

    @Override
    final void readRest(Fields fields) {
        if (!fields.uint32()) {
            fields.refuse();
        }
        count = fields.mantissa();
        hasLastEdge = fields.uint32();
        lastEdgeTickUs = fields.mantissa();
    }

    /** Returns the pulses since the hub's power-on, modulo 2³². */
    public final long count() {
        return count;
    }

    /** Returns whether a pulse was seen since the hub's power-on. */
    public final boolean hasLastEdge() {
        return hasLastEdge;
    }

    /**
     * Returns the hub's tick at the last counted edge, in microseconds modulo 2³².
     *
     * @throws IllegalStateException when no pulse was seen yet
     */
    public final long lastEdgeTickUs() {
        if (!hasLastEdge) {
            throw Absent.of("tick of a last edge");
        }
        return lastEdgeTickUs;
    }
}
