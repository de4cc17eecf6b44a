/**
 * Instruments: serial ports heard for a while, and what came as raw numbers.
 *
 * <p>Decides nothing about what it hears, and sends nothing. The only room of the provers with a clock.
 */
@NullMarked
package evenfall.bench.prove.listen;

import org.jspecify.annotations.NullMarked;
