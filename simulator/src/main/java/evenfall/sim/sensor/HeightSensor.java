package evenfall.sim.sensor;

import evenfall.sim.wire.HubSentences;

/** Something that looks straight down from the boom; the hub passes on the time that an echo took, or would have taken. */
public interface HeightSensor {
    /**
     * One look.
     *
     * @param heightM of the outlets at the sensor's place over what it sees under it, m
     * @param airC true air temperature, °C
     * @return time of the echo, µs, or {@link HubSentences#UNKNOWN} where none came
     */
    long echoUs(double heightM, double airC);

    /** Time that the sensor gives for a distance from its face, µs, whatever stands there. */
    double echoUsOf(double distanceM, double airC);
}
