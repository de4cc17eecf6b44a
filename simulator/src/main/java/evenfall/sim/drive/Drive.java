package evenfall.sim.drive;

import evenfall.sim.vehicle.Pose;

/**
 * The driver: follows the path and goes for each wanted speed in turn at a limited acceleration. One owner,
 * one thread.
 */
public final class Drive {

    private final DrivePlan plan;
    private int next;
    private double wantedMps;
    private double speedMps;
    private double accelerationMps2;
    private double distanceM;
    private double timeS;
    private Pose pose;

    public Drive(DrivePlan plan) {
        this.plan = plan;
        this.wantedMps = plan.startMps();
        this.speedMps = plan.startMps();
        this.pose = plan.path().poseAt(0);
    }

    /** @param dtS length of the step, s, above 0 */
    public void step(double dtS) {
        while (next < plan.changes().size() && reached(plan.changes().get(next))) {
            wantedMps = plan.changes().get(next).speedMps();
            next++;
        }
        double most = plan.accelerationMps2() * dtS;
        double before = speedMps;
        speedMps += Math.max(-most, Math.min(most, wantedMps - speedMps));
        accelerationMps2 = (speedMps - before) / dtS;
        distanceM += 0.5 * (before + speedMps) * dtS;
        timeS += dtS;
        pose = plan.path().poseAt(distanceM);
    }

    private boolean reached(SpeedChange change) {
        return isReached(change.atS(), change.atM());
    }

    /** Whether this moment and this place have both come. */
    boolean isReached(double atS, double atM) {
        // Half a nanosecond and half a nanometre of slack: sums of steps fall a little short of round numbers.
        return timeS >= atS - 5e-10 && distanceM >= atM - 5e-10;
    }

    public DrivePlan plan() {
        return plan;
    }

    /** Time since the start, s. */
    public double timeS() {
        return timeS;
    }

    /** Distance driven, m. */
    public double distanceM() {
        return distanceM;
    }

    /** Where the machine is now. */
    public Pose pose() {
        return pose;
    }

    /** Speed of the hanging point, m/s. */
    public double speedMps() {
        return speedMps;
    }

    /** How fast the speed grew over the last step, m/s². */
    public double accelerationMps2() {
        return accelerationMps2;
    }

    /** How fast the heading turns, rad/s, positive to the right. */
    public double yawRateRadps() {
        return speedMps * plan.path().curvaturePerM(distanceM);
    }

    /**
     * Speed over the ground of a place on a rigid boom, m/s, forward: less on the inner side of a bend than on
     * the outer one, and below zero where the boom is swung back.
     *
     * @param rightM right of the centre, m
     */
    public double speedAtM(double rightM) {
        return speedMps * (1 - rightM * plan.path().curvaturePerM(distanceM));
    }

    /** Whether the machine is on a pass, not in a headland turn. */
    public boolean onPass() {
        return plan.path().onPass(distanceM);
    }
}
