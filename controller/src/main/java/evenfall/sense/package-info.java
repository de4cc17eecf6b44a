/**
 * From decoded sentences to quantities: flow, pressure, speed, heights, sections; each with its age, or with the reason why it
 * is not known.
 *
 * <p>Runs on the time that events carry. Knows nothing of limits or alerts.
 */
@NullMarked
package evenfall.sense;

import org.jspecify.annotations.NullMarked;
