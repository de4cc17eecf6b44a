package evenfall.wire;

/** {@code $PEVFI}: who the hub is and how often it has started; a new boot count says that all counters began anew. */
public final class HubIdentity extends HubSentence {

    private long bootCount;
    private long firmwareVersion;

    HubIdentity() {}

    @Override
    void readRest(Fields fields) {
        if (!fields.uint32()) {
            fields.refuse();
        }
        bootCount = fields.mantissa();
        if (!fields.uint32()) {
            fields.refuse();
        }
        firmwareVersion = fields.mantissa();
    }

    /** Returns how often the hub has been powered on in its life, modulo 2³². */
    public long bootCount() {
        return bootCount;
    }

    /** Returns the firmware's version, a whole number that grows. */
    public long firmwareVersion() {
        return firmwareVersion;
    }
}
