/** How long to wait before trying again what just failed. Knows no clock and no thread. */
@NullMarked
package evenfall.retry;

import org.jspecify.annotations.NullMarked;
