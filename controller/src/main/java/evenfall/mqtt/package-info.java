/**
 * The way to the broker: an outbox of our own, and one thread that connects, sends, and starts anew when anything is wrong.
 *
 * <p>MQTT 3.1.1 by Eclipse Paho, whose own buffering and reconnecting stay off: they have been seen to lose messages and to get
 * stuck. Nothing here ever makes a publisher wait. Knows topics and bytes, not what is in them.
 */
@NullMarked
package evenfall.mqtt;

import org.jspecify.annotations.NullMarked;
