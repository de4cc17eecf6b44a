/**
 * Which outlets to fit: what each type's metering sizes reach, what height does to its rows, what it wets, what it costs; ranked,
 * with reasons.
 *
 * <p>Computes on a level boom with the controller's outlets, orifice law and pattern; the width of streams comes from the
 * simulator's flight. {@link evenfall.bench.choose.Choice} is the answer; text, JSON and page are made from it. Knows nothing of
 * scenarios, traces or runs.
 */
@NullMarked
package evenfall.bench.choose;

import org.jspecify.annotations.NullMarked;
