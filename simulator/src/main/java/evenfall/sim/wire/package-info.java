/**
 * The simulator's own writing of sentences, and the time they take on a serial line.
 *
 * <p>May not use the controller's {@code wire}: two encoders that share code share their faults. Both are held to one table,
 * {@code controller/docs/golden-sentences.tsv}. Knows nothing of what the numbers mean or how they were measured.
 */
@NullMarked
package evenfall.sim.wire;

import org.jspecify.annotations.NullMarked;
