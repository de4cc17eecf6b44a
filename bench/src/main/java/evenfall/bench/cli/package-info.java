/**
 * The command line: subcommands, their options, exit status, and what goes to which stream.
 *
 * <p>Results go to standard output (one JSON document with {@code --json}), all else to standard error. Status 0 means done, 1
 * that the work failed or a limit was not met, 2 that the input is wrong. Knows every other bench package; none knows it.
 */
@NullMarked
package evenfall.bench.cli;

import org.jspecify.annotations.NullMarked;
