/**
 * Files of surveyed heights: the shell around {@link evenfall.sim.ground.ElevationGrid}.
 *
 * <p>Reads files and complains about them; knows nothing of what drives over the heights.
 */
@NullMarked
package evenfall.sim.elevation;

import org.jspecify.annotations.NullMarked;
