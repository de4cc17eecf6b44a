package evenfall.wire;

/** {@code $PEVFQ}: pulses of the flow meter. */
public final class FlowPulses extends PulseCount {
    FlowPulses() {}
}
