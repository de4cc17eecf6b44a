/**
 * The main job: a simulated drive, the monitor on its bytes, and the score.
 *
 * <p>At real pace the monitor is its own process on virtual serial ports and a broker, exactly as on the board; at pace max the same
 * bytes go, with the scenario's time stamps, through the same core and message writer in this process. The truth is not looked at
 * here: it is handed, unopened, to {@code score}.
 */
@NullMarked
package evenfall.bench.run;

import org.jspecify.annotations.NullMarked;
