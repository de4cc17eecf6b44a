/**
 * The simulator alone: onto virtual or real serial ports in real time, or into a trace.
 *
 * <p>No monitor and no score; the truth goes nowhere.
 */
@NullMarked
package evenfall.bench.feed;

import org.jspecify.annotations.NullMarked;
