package evenfall.wire;

/** {@code $PEVFH}: round-trip echo times of one to seven height sensors, in the rig's order, left to right. */
public final class HeightEchoes extends HubSentence {

    /** As many sensors as one sentence may carry. */
    public static final int MOST_SENSORS = 7;

    private static final long ECHO_LIMIT_US = 999_999;
    private static final long NO_ECHO = -1;

    private final long[] echoUs = new long[MOST_SENSORS];
    private int sensors;

    HeightEchoes() {}

    @Override
    void readRest(Fields fields) {
        sensors = 0;
        do {
            if (sensors == MOST_SENSORS) {
                fields.refuse();
                return;
            }
            echoUs[sensors] = fields.whole(ECHO_LIMIT_US) ? fields.mantissa() : NO_ECHO;
            sensors++;
        } while (fields.more());
    }

    /** Returns how many sensors the sentence speaks of, 1 to 7. */
    public int sensors() {
        return sensors;
    }

    /**
     * Returns whether a sensor heard an echo.
     *
     * @param sensor 0 for the first in the rig's order
     * @throws IndexOutOfBoundsException when there is no such sensor in the sentence
     */
    public boolean hasEcho(int sensor) {
        return echo(sensor) != NO_ECHO;
    }

    /**
     * Returns the round-trip echo time of a sensor in microseconds, 0 to 999 999.
     *
     * @param sensor 0 for the first in the rig's order
     * @throws IllegalStateException when the sensor heard no echo
     * @throws IndexOutOfBoundsException when there is no such sensor in the sentence
     */
    public long echoUs(int sensor) {
        long us = echo(sensor);
        if (us == NO_ECHO) {
            throw Absent.of("echo of this sensor");
        }
        return us;
    }

    private long echo(int sensor) {
        if (sensor < 0 || sensor >= sensors) {
            throw new IndexOutOfBoundsException(sensor);
        }
        return echoUs[sensor];
    }
}
