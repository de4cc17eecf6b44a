/**
 * The program on the board: threads, clock, files, signals, console. Everything that can only be tried by running it is here
 * and is kept thin.
 */
@NullMarked
package evenfall.app;

import org.jspecify.annotations.NullMarked;
