package evenfall.wire;

/**
 * Takes the sentences of one port as they are decoded, in the order of their last bytes.
 *
 * <p>Each object handed over is a view that the stream fills again with the next sentence of its kind: it is valid
 * only during the call. Copy the numbers, never keep the object.
 *
 * <p>A handler that throws ends the {@link SentenceStream#accept} it was called from; the sentence is counted, the
 * bytes after it in that chunk are lost. So it should not throw.
 */
public interface SentenceHandler {

    /** A receiver's recommended minimum: time, position, speed, course. */
    default void onRmc(Rmc rmc) {}

    /** A receiver's course and speed over ground. */
    default void onVtg(Vtg vtg) {}

    /** A receiver's fix quality, height and position. */
    default void onGga(Gga gga) {}

    /** The hub's flow meter pulses. */
    default void onFlow(FlowPulses flow) {}

    /** The hub's wheel or radar pulses. */
    default void onWheel(WheelPulses wheel) {}

    /** The hub's height sensor echoes. */
    default void onHeights(HeightEchoes heights) {}

    /** The hub's pressure transmitter current. */
    default void onPressure(PressureCurrent pressure) {}

    /** The hub's section switches. */
    default void onSections(SectionSwitches sections) {}

    /** The hub's air temperature. */
    default void onAir(AirTemperature air) {}

    /** The hub's tank level. */
    default void onLevel(TankLevel level) {}

    /** The hub's boot count and firmware version. */
    default void onHub(HubIdentity hub) {}

    /** Somebody has seen an alert; of meaning on the cab view's own port only. */
    default void onAcknowledgement(Acknowledgement acknowledgement) {}
}
