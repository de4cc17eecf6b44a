/**
 * A run as it happens, in a terminal: the boom over the ground, the rate, the rows, and what to do.
 *
 * <p>Shows what the monitor says and nothing of the truth: that is the driver's view.
 */
@NullMarked
package evenfall.bench.live;

import org.jspecify.annotations.NullMarked;
