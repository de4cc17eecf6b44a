/**
 * The trainer's console: a small web page from this machine that drives simulated runs and shows what the monitor says of them. It
 * relays the monitor's own messages; the truth comes beside them, by frames of its own kind, and only when somebody asks.
 */
@NullMarked
package evenfall.bench.console;

import org.jspecify.annotations.NullMarked;
