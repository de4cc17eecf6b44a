package evenfall.sim.vehicle;

/**
 * A linear second-order mode that follows a target: {@code q̈ = −ω²(q − g) − 2ζω(q̇ − ġ)}, a mass on a
 * spring and damper whose foot moves as g.
 *
 * <p>Each step is exact for a target that moves evenly from its last value to its next: the distance
 * r = q − g then obeys the free equation, whose solution is written out with the exponential, and only
 * the target's speed jumps between steps. So there is no error of integration to choose a step for, no
 * step is too long to be stable, and with a target at rest the energy {@code ½ṙ² + ½ω²r²} never grows.
 *
 * <p>A mode of infinite frequency is rigid: it is where its target is.
 */
public final class Mode {

    private final double omega;
    private final double zeta;

    private double stepS = -1;
    private double rFromR;
    private double rFromV;
    private double vFromR;
    private double vFromV;

    private double target;
    private double targetSpeed;
    private double r;
    private double v;

    /**
     * @param naturalHz undamped natural frequency, Hz, above 0; infinite for a rigid mode
     * @param dampingRatio share of critical damping, 0 or above
     * @throws IllegalArgumentException when they are not
     */
    public Mode(double naturalHz, double dampingRatio) {
        if (!(naturalHz > 0)) {
            throw new IllegalArgumentException("natural frequency must be above 0 Hz, not " + naturalHz);
        }
        if (!(dampingRatio >= 0 && dampingRatio < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("damping ratio must be 0 or above, not " + dampingRatio);
        }
        this.omega = 2 * StrictMath.PI * naturalHz;
        this.zeta = dampingRatio;
    }

    /** Puts the mode at rest on a target at rest. */
    public void place(double target) {
        placeAt(target, 0, 0);
    }

    /** Puts the mode on a target that moves evenly, moving with it. */
    public void placeMoving(double target, double targetSpeed) {
        placeAt(target, 0, 0);
        this.targetSpeed = targetSpeed;
    }

    /**
     * A blow: another speed at once, from where it is.
     *
     * @param speedChange in the target's unit per second; a rigid mode does not feel it
     */
    public void push(double speedChange) {
        if (omega != Double.POSITIVE_INFINITY) {
            v += speedChange;
        }
    }

    /** Puts the mode at this distance from a target at rest, moving at this speed. */
    void placeAt(double target, double offset, double speed) {
        this.target = target;
        this.targetSpeed = 0;
        this.r = offset;
        this.v = speed;
    }

    /**
     * One step during which the target moves evenly to a new value.
     *
     * @param dtS length of the step, s, above 0
     * @param nextTarget the target at the end of the step
     */
    public void step(double dtS, double nextTarget) {
        double nextSpeed = (nextTarget - target) / dtS;
        if (omega == Double.POSITIVE_INFINITY) {
            target = nextTarget;
            targetSpeed = nextSpeed;
            return;
        }
        if (dtS != stepS) {
            prepare(dtS);
        }
        double v0 = v + targetSpeed - nextSpeed;
        double r1 = rFromR * r + rFromV * v0;
        v = vFromR * r + vFromV * v0;
        r = r1;
        target = nextTarget;
        targetSpeed = nextSpeed;
    }

    /** Where the mode is, in the target's unit. */
    public double value() {
        return target + r;
    }

    /** How fast it moves, per second. */
    public double speed() {
        return targetSpeed + v;
    }

    /** Its distance from the target. */
    public double offset() {
        return r;
    }

    /** The target that it follows, as of the last step. */
    public double target() {
        return target;
    }

    /** Energy of the distance per unit of mass, {@code ½ṙ² + ½ω²r²}; a rigid mode has none. */
    public double energy() {
        return omega == Double.POSITIVE_INFINITY ? 0.0 : 0.5 * v * v + 0.5 * omega * omega * r * r;
    }

    private void prepare(double dtS) {
        if (!(dtS > 0 && dtS < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("step must be above 0 s, not " + dtS);
        }
        stepS = dtS;
        double decay = zeta * omega;
        // c and s stand for cos and sin/ωd below critical damping, for cosh and sinh/ωd above it, both times
        // the decay; at it, for 1 and the time.
        double c;
        double s;
        if (zeta < 1) {
            double omegaD = omega * Math.sqrt(1 - zeta * zeta);
            double fade = StrictMath.exp(-decay * dtS);
            c = fade * StrictMath.cos(omegaD * dtS);
            s = fade * StrictMath.sin(omegaD * dtS) / omegaD;
        } else if (zeta == 1) {
            c = StrictMath.exp(-decay * dtS);
            s = c * dtS;
        } else {
            double omegaD = omega * Math.sqrt(zeta * zeta - 1);
            double slow = StrictMath.exp((omegaD - decay) * dtS);
            double fast = StrictMath.exp((-omegaD - decay) * dtS);
            c = (slow + fast) / 2;
            s = (slow - fast) / 2 / omegaD;
        }
        rFromR = c + decay * s;
        rFromV = s;
        vFromR = -omega * omega * s;
        vFromV = c - decay * s;
    }
}
