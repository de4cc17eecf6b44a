/**
 * The core: one object that takes events and gives outputs, on the time that events carry.
 *
 * <p>Owns no thread, clock, file, socket, logger or random number; the same events give the same outputs on any machine.
 */
@NullMarked
package evenfall.monitor;

import org.jspecify.annotations.NullMarked;
