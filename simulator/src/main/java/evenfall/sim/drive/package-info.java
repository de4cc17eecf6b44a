/**
 * The way that the machine goes, how fast, and when its sections are switched: straight passes, headland
 * turns, speeds that change at a limited acceleration.
 *
 * <p>Pure geometry and arithmetic. Knows the pose that chassis and boom are stepped with, and nothing of
 * ground, liquid or sensors.
 */
@NullMarked
package evenfall.sim.drive;

import org.jspecify.annotations.NullMarked;
