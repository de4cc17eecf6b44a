/**
 * From outlets to rows: where streams land, what each crop row gets, and the measures of it.
 *
 * <p>One code for the desk ({@link evenfall.pattern.StaticPattern}) and the field ({@link evenfall.pattern.BoomPattern}). Pure
 * arithmetic; {@code StrictMath} where the JDK would otherwise choose.
 *
 * <p>Frame at an outlet: <em>right</em> along the boom, <em>back</em> against travel, <em>down</em>. Positions along the boom
 * are metres to the right of its centre line.
 */
@NullMarked
package evenfall.pattern;

import org.jspecify.annotations.NullMarked;
