/**
 * A recording through the monitor's core, without ports or broker: what was understood, what was raised, and the digest of all
 * that was said.
 *
 * <p>Knows nothing of the simulator; a recording is a recording.
 */
@NullMarked
package evenfall.bench.replay;

import org.jspecify.annotations.NullMarked;
