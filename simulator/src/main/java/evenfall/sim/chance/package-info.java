/**
 * Seeded random numbers: one generator, and one stream of it per name.
 *
 * <p>Knows nothing of what the numbers are for. No clock, no default seed, no shared state: a stream
 * is made from the scenario's seed and a name and handed to whoever needs chance.
 */
@NullMarked
package evenfall.sim.chance;

import org.jspecify.annotations.NullMarked;
