/**
 * The broker between the monitor and the bench: an embedded one, or anyone's by address; and the bench's listener at it.
 *
 * <p>Knows topics and payloads as text only.
 */
@NullMarked
package evenfall.bench.broker;

import org.jspecify.annotations.NullMarked;
