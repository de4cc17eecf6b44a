/**
 * The bench page's side of the server: bench tests as guided steps, live signals of a port, results kept. Leads the same guide with
 * the same instruments and files as the command line, and computes nothing of its own; listens only, and sends nothing to any port.
 */
@NullMarked
package evenfall.bench.workbench;

import org.jspecify.annotations.NullMarked;
