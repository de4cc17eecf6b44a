/**
 * The sensors and the two boxes that speak for them: the sensor hub and the GNSS receiver.
 *
 * <p>Each takes truth, adds what its kind gets wrong, and gives raw counts, times and currents, never a quantity that a person
 * would read. Each draws from a random stream of its own. Knows nothing of what the monitor believes or does. What can go
 * wrong is a state of each part, set and cleared from outside; a part knows nothing of when. A part in trouble draws from its own
 * stream as it always does, so that all is as it would have been once the trouble is over.
 */
@NullMarked
package evenfall.sim.sensor;

import org.jspecify.annotations.NullMarked;
