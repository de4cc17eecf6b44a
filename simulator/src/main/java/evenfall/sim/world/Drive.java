package evenfall.sim.world;

import evenfall.sim.scenario.DriveSpec;

/** The driver: goes for each wanted speed in turn at a limited acceleration. */
final class Drive {
    private final DriveSpec spec;
    private int next;
    private double wantedMps;
    private double speedMps;
    private double xM;
    private double timeS;

    Drive(DriveSpec spec) {
        this.spec = spec;
        this.wantedMps = spec.startMps();
        this.speedMps = spec.startMps();
    }

    void step(double dtS) {
        while (next < spec.changes().size() && reached(spec.changes().get(next))) {
            wantedMps = spec.changes().get(next).speedMps();
            next++;
        }
        double most = spec.accelerationMps2() * dtS;
        double before = speedMps;
        speedMps += Math.max(-most, Math.min(most, wantedMps - speedMps));
        xM += 0.5 * (before + speedMps) * dtS;
        timeS += dtS;
    }

    private boolean reached(DriveSpec.Change change) {
        // Half a nanosecond and half a nanometre of slack: sums of steps fall a little short of round numbers.
        return (change.atS().isPresent() && timeS >= change.atS().getAsDouble() - 5e-10)
                || (change.atM().isPresent() && xM >= change.atM().getAsDouble() - 5e-10);
    }

    double speedMps() {
        return speedMps;
    }

    /** Distance driven, m. */
    double xM() {
        return xM;
    }
}
