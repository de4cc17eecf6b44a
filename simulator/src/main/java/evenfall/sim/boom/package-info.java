/**
 * The boom: how it rolls, bends, sways and is tilted, how high each outlet is over the ground under it, and
 * what happens when it strikes.
 *
 * <p>Knows the ground and the chassis it hangs on. Knows nothing of outlets but where they sit, and
 * nothing of what a monitor measures: the height control here is the machine's own and has its own eyes.
 */
@NullMarked
package evenfall.sim.boom;

import org.jspecify.annotations.NullMarked;
