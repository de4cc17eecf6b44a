/**
 * How the liquid gets to the outlets: pump and strainer, the machine's own rate controller with its regulating valve, the boom's
 * line, the sections and each outlet's orifice; and what can go wrong with each.
 *
 * <p>The rate controller here belongs to the machine, not to the monitor: it has its own meter and its own idea of the ground speed,
 * both late and possibly wrong. Knows nothing of where the streams land, of who watches, or of when trouble comes. What leaves the
 * tank leaves the outlets, leaks, or stays in the lines.
 */
@NullMarked
package evenfall.sim.plumbing;

import org.jspecify.annotations.NullMarked;
