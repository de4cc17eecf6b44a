/**
 * Judgement: from what is sensed to few, true alerts that say what to do.
 *
 * <p>Each alert kind has its limit, its hold (in time and in metres) and its hysteresis. Knows nothing of messages or ports.
 */
@NullMarked
package evenfall.judge;

import org.jspecify.annotations.NullMarked;
