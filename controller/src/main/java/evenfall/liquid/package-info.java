/**
 * The liquids that go through the boom and the orifice law that meters them.
 *
 * <p>Pure: no files, no clock. Densities are for about 16 to 20 °C; a density measured on the farm is always better.
 */
@NullMarked
package evenfall.liquid;

import org.jspecify.annotations.NullMarked;
