/**
 * Many runs, scored: which fault or event was raised, how soon, what was raised without cause, and how far the reported quantities were
 * from the truth.
 *
 * <p>The truth itself stays in {@code score}; here are only scores.
 */
@NullMarked
package evenfall.bench.matrix;

import org.jspecify.annotations.NullMarked;
