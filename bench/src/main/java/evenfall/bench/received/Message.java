package evenfall.bench.received;

/**
 * One message of the monitor.
 *
 * @param arrivalUs when it arrived, µs on the clock of the scenario
 * @param topic full topic
 * @param payload JSON; empty where a retained message is taken away
 */
public record Message(long arrivalUs, String topic, String payload) {}
