/**
 * The same pass over the same ground with several outlet types, side by side.
 *
 * <p>Runs at pace max and puts results beside each other; adds no judgement of its own.
 */
@NullMarked
package evenfall.bench.compare;

import org.jspecify.annotations.NullMarked;
