/**
 * Sheets: pages for reading and printing about a run, two runs beside each other, a comparison of outlet types, a proof.
 *
 * <p>{@link evenfall.bench.sheet.RunSheet}, {@link evenfall.bench.sheet.PairSheet}, {@link evenfall.bench.sheet.ComparisonSheet} and
 * {@link evenfall.bench.sheet.ProofSheet} each give a page and, where they have any, its pictures. Nothing here scores or decides: it
 * shows what {@code run} and {@code score} found, and what was not known with its reason.
 */
@NullMarked
package evenfall.bench.sheet;

import org.jspecify.annotations.NullMarked;
