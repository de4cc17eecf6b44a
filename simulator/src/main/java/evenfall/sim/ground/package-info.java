/**
 * The ground's height at any point: a random field of a roughness class and features placed on it.
 *
 * <p>Frame: x forward along the pass, y to the right of the pass, heights up, all in metres. Knows
 * nothing of the machine that drives over it; takes its random numbers from a stream it is handed.
 */
@NullMarked
package evenfall.sim.ground;

import org.jspecify.annotations.NullMarked;
