/**
 * Where the streams of an outlet really land: exit, coherent jet, break-up, drops in air, and how a stream lies on the rows.
 *
 * <p>{@link evenfall.sim.jet.StreamFlight} is the physics, integrated; {@link evenfall.sim.jet.FlightTable} is the same as a
 * table; {@link evenfall.sim.jet.BoomFlight} lets a whole boom fall by that table, millions of streams a second.
 *
 * <p>Knows outlets and liquids. Knows nothing of the boom that carries them, of the plumbing that feeds them or of the ground but
 * its distance, and may not use the controller's {@code pattern}: truth that is computed by the code under test proves nothing.
 */
@NullMarked
package evenfall.sim.jet;

import org.jspecify.annotations.NullMarked;
