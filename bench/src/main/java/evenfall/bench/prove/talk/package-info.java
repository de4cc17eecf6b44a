/**
 * Front ends of a guide: a person at a terminal, or a file of answers.
 *
 * <p>They ask, hand on and show; what is asked and what counts is the guide's business.
 */
@NullMarked
package evenfall.bench.prove.talk;

import org.jspecify.annotations.NullMarked;
