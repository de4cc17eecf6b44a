package evenfall.wire;

/**
 * What every sentence of the sensor hub begins with: the hub's tick at the moment of the reading.
 *
 * <p>A view that is filled again with the next sentence of its kind: valid only during the call that handed it over.
 */
public abstract sealed class HubSentence
        permits PulseCount, HeightEchoes, PressureCurrent, SectionSwitches, AirTemperature, TankLevel, HubIdentity {

    private long tickUs;

    HubSentence() {}

    final boolean read(Fields fields) {
        if (!fields.uint32()) {
            fields.refuse();
        }
        tickUs = fields.mantissa();
        readRest(fields);
        return fields.good() && !fields.more();
    }

    abstract void readRest(Fields fields);

    /**
     * Returns the hub's clock in microseconds, 0 to 4 294 967 295; it starts at 0 at power-on and wraps every 71.6
     * minutes. Differences modulo 2³² are right across a wrap.
     */
    public final long tickUs() {
        return tickUs;
    }
}
