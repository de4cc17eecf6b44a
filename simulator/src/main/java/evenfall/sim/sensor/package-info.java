/**
 * The sensors and the two boxes that speak for them: the sensor hub and the GNSS receiver.
 *
 * <p>Each takes truth, adds what its kind gets wrong, and gives raw counts, times and currents, never a quantity that a person
 * would read. Each draws from a random stream of its own. Knows nothing of what the monitor believes or does. Faults (silence,
 * stuck values, water on a face, double echoes) will come between a sensor and its box.
 */
@NullMarked
package evenfall.sim.sensor;

import org.jspecify.annotations.NullMarked;
