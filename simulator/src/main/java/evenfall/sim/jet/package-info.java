/**
 * Where the streams of an outlet really land: from tilted outlets, with the boom's own motion, by this package's own flight.
 *
 * <p>May not use the controller's {@code pattern}: truth that is computed by the code under test proves nothing. Air drag, the
 * spread of a stream and twisted outlets will come here.
 */
@NullMarked
package evenfall.sim.jet;

import org.jspecify.annotations.NullMarked;
