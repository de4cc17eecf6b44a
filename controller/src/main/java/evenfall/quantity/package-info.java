/** Trade units and how numbers are written: used at the edges only; inside everything is SI. */
@NullMarked
package evenfall.quantity;

import org.jspecify.annotations.NullMarked;
