/**
 * The row ledger: litres and nitrogen on each row in each distance cell, how much ground that makes too little or too much, and where
 * every litre of the meter went. Pure arithmetic on what the monitor knows at each moment.
 *
 * <p>Each moment's litres are shared among the rows by {@link evenfall.pattern.Fall}, from landings like those that the live rows
 * rest on, but by each sensor's own height. What a moment does not know is counted as not known, by its reason, in seconds, metres, square metres and litres; it is never nothing.
 *
 * <p>Rows and cells go with the machine: a cell covers so much way of the boom's centre line, over the whole width. In a bend they bend
 * along, and that the outer wing then covers more ground than the inner one is not reckoned. Nor is it that streams thrown to the rear
 * land behind the boom: every litre counts for the cell that the boom is over.
 */
@NullMarked
package evenfall.ledger;

import org.jspecify.annotations.NullMarked;
