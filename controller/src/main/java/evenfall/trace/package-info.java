/**
 * The text form of a recording: every input of the monitor in the order of arrival, with its time, so that it can be
 * replayed to the same bytes of output.
 *
 * <p>One event a line: {@code <microseconds since start> <port> <rest>}. The rest is a whole sentence as it came (these
 * characters and CR LF, in one chunk), {@code bytes:<percent-escaped>} for a chunk of any other kind, {@code lost},
 * {@code found}, or {@code dropped:<bytes>}. {@code <microseconds> - end} closes it. Times never fall; from one
 * event to the next it is 7 days at most, and 31 days in all. Lines that start
 * with {@code #} are remarks. The whole may be gzip-compressed; that is seen from its first bytes, not from a name.
 * Ticks of the clock are not stored, since they follow from the times.
 *
 * <p>Bytes are kept in the chunks they came in and are not decoded here: replay enters where bytes enter. A raw log of
 * a receiver, which has no times, is turned into the same events by {@link evenfall.trace.RawLog}.
 *
 * <p>It knows streams of bytes that are handed in, and no file, port or clock.
 */
@NullMarked
package evenfall.trace;

import org.jspecify.annotations.NullMarked;
