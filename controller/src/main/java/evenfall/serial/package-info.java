/**
 * Bytes from serial ports, through unplugging and back.
 *
 * <p>One thread a port. Knows nothing of what the bytes mean, and stamps nothing: the {@link evenfall.serial.PortListener} does,
 * so that one clock in one place orders all ports.
 */
@NullMarked
package evenfall.serial;

import org.jspecify.annotations.NullMarked;
