/**
 * What the monitor said, as messages, and what stands in them.
 *
 * <p>Reads the monitor's JSON as any outsider would, by the published schemas; knows nothing of the truth.
 */
@NullMarked
package evenfall.bench.received;

import org.jspecify.annotations.NullMarked;
