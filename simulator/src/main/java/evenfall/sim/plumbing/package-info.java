/**
 * How the liquid gets to the outlets: the machine's own rate controller, its regulating valve, the boom's line and each outlet's
 * orifice.
 *
 * <p>The rate controller here belongs to the machine, not to the monitor: it has its own idea of the ground speed and is late, as
 * they are. Knows nothing of where the streams land or of who watches. What flows into the boom flows out of the outlets: the
 * meter's flow is the sum of theirs. Blocked, worn and leaking outlets will come here.
 */
@NullMarked
package evenfall.sim.plumbing;

import org.jspecify.annotations.NullMarked;
