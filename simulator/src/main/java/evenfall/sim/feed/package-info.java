/**
 * Where a run's bytes go: into a trace file, onto a virtual or a real serial port, at full speed or at the pace of the clock.
 *
 * <p>The only package of the simulator that touches files, devices, threads and the clock. Knows emissions and nothing of what
 * made them. Nothing here waits for ever for a reader: what nobody takes is dropped and counted.
 */
@NullMarked
package evenfall.sim.feed;

import org.jspecify.annotations.NullMarked;
