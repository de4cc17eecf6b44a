/**
 * Scenario files: what a world is, and what the installer of the rig believes.
 *
 * <p>The two are read apart. The controller's rig file comes from the second part alone; nothing of the first may reach it but as
 * bytes on a wire. Where the world equals the belief, the file says so ({@code installed: as-believed}). What goes wrong
 * on the way stands with the world, for it is true whether or not anybody knows.
 */
@NullMarked
package evenfall.sim.scenario;

import org.jspecify.annotations.NullMarked;
