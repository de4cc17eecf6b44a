/** The truth of a run as JSON for a trainer's page, and nothing that the monitor says: the page asks for it by name or goes without. */
@NullMarked
package evenfall.bench.reveal;

import org.jspecify.annotations.NullMarked;
