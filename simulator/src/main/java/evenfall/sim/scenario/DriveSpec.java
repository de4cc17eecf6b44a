package evenfall.sim.scenario;

import java.util.List;
import java.util.OptionalDouble;

/**
 * How the machine is driven: straight ahead, at speeds that change one after another.
 *
 * @param startMps speed at the start, m/s
 * @param accelerationMps2 how fast it speeds up and slows down, m/s², above 0
 * @param changes in the order in which they come; each waits for the one before
 */
public record DriveSpec(double startMps, double accelerationMps2, List<Change> changes) {
    public DriveSpec {
        changes = List.copyOf(changes);
    }

    /**
     * Another speed from a moment, or from a place, on. One of the two is given.
     *
     * @param atS moment, s from the start
     * @param atM place, m along the pass
     * @param speedMps the speed that the driver goes for, m/s
     */
    public record Change(OptionalDouble atS, OptionalDouble atM, double speedMps) {}
}
