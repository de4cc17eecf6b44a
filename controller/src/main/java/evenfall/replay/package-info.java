/**
 * The core with its outputs written as messages, driven by events: the same for a live box and for a recorded trace, so that a
 * trace replays to the same bytes.
 *
 * <p>Owns no thread and no clock. Knows nothing of ports or brokers.
 */
@NullMarked
package evenfall.replay;

import org.jspecify.annotations.NullMarked;
