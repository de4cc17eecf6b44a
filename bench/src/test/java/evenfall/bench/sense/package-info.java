/** The monitor's estimators against the simulator's truth. */
@NullMarked
package evenfall.bench.sense;

import org.jspecify.annotations.NullMarked;
