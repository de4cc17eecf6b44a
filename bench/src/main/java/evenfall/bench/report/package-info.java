/**
 * How results look: the units people read, tables, bars, colours, and JSON numbers.
 *
 * <p>Knows text and numbers only; nothing of runs, scores or where output goes. Colours are asked for, never guessed here.
 */
@NullMarked
package evenfall.bench.report;

import org.jspecify.annotations.NullMarked;
