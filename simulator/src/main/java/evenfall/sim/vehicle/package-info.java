/**
 * The machine's chassis on its four wheels: what the ground does to the point where the boom hangs.
 *
 * <p>Knows the ground and nothing of booms, liquids or sensors. Linear: small angles, wheels that never
 * leave the ground. Straight ahead or along any path, told where it is by whoever steps it; a bend does not
 * lean it over, and braking does not make it nod.
 */
@NullMarked
package evenfall.sim.vehicle;

import org.jspecify.annotations.NullMarked;
