/**
 * Outlet types: how many streams, which way each leaves, which share of the flow it carries. The built-in catalogue and
 * user files have one form.
 *
 * <p>Types are generic; nothing here stands for a product on sale.
 */
@NullMarked
package evenfall.outlet;

import org.jspecify.annotations.NullMarked;
