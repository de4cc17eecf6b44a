/**
 * The machine's chassis on its four wheels: what the ground does to the point where the boom hangs.
 *
 * <p>Knows the ground and nothing of booms, liquids or sensors. Linear: small angles, wheels that never
 * leave the ground, travel straight ahead.
 */
@NullMarked
package evenfall.sim.vehicle;

import org.jspecify.annotations.NullMarked;
