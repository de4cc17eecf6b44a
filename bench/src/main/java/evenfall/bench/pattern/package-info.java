/**
 * What lands where for one outlet type on a level boom: the desk's question, as JSON and as a picture.
 *
 * <p>Uses the controller's outlet catalogue and pattern; knows nothing of scenarios, traces or runs.
 */
@NullMarked
package evenfall.bench.pattern;

import org.jspecify.annotations.NullMarked;
