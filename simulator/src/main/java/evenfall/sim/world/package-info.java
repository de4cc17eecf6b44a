/**
 * Steps ground, machine, boom, plumbing, streams and sensors together on a fixed step, and keeps the books of what really fell
 * where.
 *
 * <p>Two things leave: {@link evenfall.sim.world.Emission}s, the only door to the controller (moment, port, bytes), and truth, for
 * the bench to score when the run is over. No clock, no thread, no files: the same scenario and seed give the same bytes.
 */
@NullMarked
package evenfall.sim.world;

import org.jspecify.annotations.NullMarked;
