/**
 * Results on disk: the dated result file, the answers given so far, and constants written into a rig file.
 *
 * <p>What is written is whole or not at all. Knows nothing of ports or terminals.
 */
@NullMarked
package evenfall.bench.prove.record;

import org.jspecify.annotations.NullMarked;
