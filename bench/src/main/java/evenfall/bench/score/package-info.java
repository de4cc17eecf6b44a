/**
 * The truth beside what the monitor said, after the run.
 *
 * <p>The only package that reads the simulator's truth log. What should have been raised follows from the truth by the public
 * definitions of the alerts, never by calling the monitor's own judgement. Truth and report are different types.
 */
@NullMarked
package evenfall.bench.score;

import org.jspecify.annotations.NullMarked;
