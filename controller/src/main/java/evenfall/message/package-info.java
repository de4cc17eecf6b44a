/**
 * What leaves the box: topics and JSON payloads, byte for byte the same for the same outputs.
 *
 * <p>Pure: no clock, thread or socket. Every number is written by {@link evenfall.quantity.FixedDecimals}, every key names its
 * unit, and what is not known is null with the reason beside it. Knows nothing of brokers; a {@link
 * evenfall.message.Publisher} takes what is written here.
 */
@NullMarked
package evenfall.message;

import org.jspecify.annotations.NullMarked;
