package evenfall.wire;

/** {@code $PEVFW}: pulses of a wheel sensor or a radar. */
public final class WheelPulses extends PulseCount {
    WheelPulses() {}
}
