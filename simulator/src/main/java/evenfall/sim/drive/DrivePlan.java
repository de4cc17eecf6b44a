package evenfall.sim.drive;

import java.util.ArrayList;
import java.util.List;

/**
 * Where the machine is driven and how fast.
 *
 * @param startMps speed at the start, m/s, 0 or above
 * @param accelerationMps2 how fast it speeds up and slows down, m/s², above 0
 * @param changes in the order in which they come; each waits for the one before
 */
public record DrivePlan(Path path, double startMps, double accelerationMps2, List<SpeedChange> changes) {

    public DrivePlan {
        changes = List.copyOf(changes);
        if (!(startMps >= 0 && startMps < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("speed at the start, m/s, must be 0 or above, not " + startMps);
        }
        if (!(accelerationMps2 > 0 && accelerationMps2 < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("acceleration, m/s², must be above 0, not " + accelerationMps2);
        }
    }

    /**
     * One speed on the passes and another in the headland, where the driver has slowed down before the turn
     * and speeds up after it.
     *
     * @param passMps speed on the passes, m/s
     * @param turnMps speed in the turns, m/s, above 0 and not above passMps
     */
    public static DrivePlan slowInTurns(Path path, double passMps, double turnMps, double accelerationMps2) {
        if (!(turnMps > 0 && turnMps <= passMps)) {
            throw new IllegalArgumentException(
                    "speed in turns, m/s, must be above 0 and at most " + passMps + ", not " + turnMps);
        }
        double braking = (passMps * passMps - turnMps * turnMps) / (2 * accelerationMps2);
        List<SpeedChange> changes = new ArrayList<>();
        boolean leaving = true;
        for (double edge : path.passEdgesM()) {
            if (edge < path.lengthM()) {
                changes.add(leaving ? SpeedChange.atM(edge - braking, turnMps) : SpeedChange.atM(edge, passMps));
            }
            leaving = !leaving;
        }
        return new DrivePlan(path, passMps, accelerationMps2, changes);
    }
}
