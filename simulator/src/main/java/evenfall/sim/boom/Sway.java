package evenfall.sim.boom;

import evenfall.sim.vehicle.Chassis;
import evenfall.sim.vehicle.Mode;

/**
 * The boom's motion in the horizontal, as distances and speeds of its places ahead of where a rigid boom on
 * a machine that keeps its path would have them.
 *
 * <p>With the yaw φ of the straight boom against the chassis's heading g, the bending a of the right tip back
 * and of the left tip forward, and the bending b of both tips forward, a place y to the right with bending
 * shape ψ is {@code −y φ ∓ ψ a + ψ b} ahead. Lagrange's equations with the mass sums of {@link WingMass} are
 *
 * <pre>  | I   2p | | φ̈ |   | I ωy²       | | φ |      | I  |
 *  | 2p  2m | | ä | + |      2m ωb² | | a | = −  | 2p | g̈        m (b̈ + ωb² b) = −∫μψ · ẍ</pre>
 *
 * <p>with x the way that the centre has gone. The first two are taken apart into their normal modes, so that
 * there are three independent {@link Mode}s, each exact over a step; damping is given to each mode. Their
 * energies are the boom's energy, and none of it grows without force.
 *
 * <p>What drives them: the heading along the path and the way gone along it (turning, braking, starting);
 * the machine turned off its path by ground that gets steeper under its wheels; and the pitching chassis,
 * which throws the boom back and forth. Left out: the boom's pull back on the machine, and that a swayed
 * outlet looks at other ground than a rigid one: heights are taken under the rigid boom.
 */
final class Sway {

    private final SwaySpec spec;
    private final Mode slow;
    private final Mode fast;
    private final Mode alike;
    private final Lag steered;

    // Share of a mode's coordinate in yaw and in bending, and how much of the heading drives it.
    private final double slowYaw;
    private final double slowBend;
    private final double slowDrive;
    private final double fastYaw;
    private final double fastBend;
    private final double fastDrive;
    private final double alikeDrive;

    // What of the heading's own speed is left over in yaw and bending once the modes' speeds are added up.
    private final double yawRest;
    private final double bendRest;

    private boolean moving;
    private double xM;
    private double yM;
    private double cos;
    private double sin;
    private double headingRad;
    private double asideRad;
    private double travelM;
    private double meanSpeed;
    private double meanYawRate;
    private double meanTurning;

    // What a place reads, as of the last step.
    private double rockM;
    private double rockSpeed;
    private double yawRad;
    private double yawSpeed;
    private double oppositeM;
    private double oppositeSpeed;
    private double alikeM;
    private double alikeSpeed;

    Sway(BoomSpec boom) {
        this.spec = boom.sway();
        WingMass mass = new WingMass(boom);
        this.steered = new Lag(spec.steeringS());
        this.alike = new Mode(spec.bendingHz(), spec.bendingDampingRatio());
        this.alikeDrive = mass.moveByBend / mass.bend;
        double inertia = mass.boomInertia;
        double both = 2 * mass.turnByBend;
        double bend = 2 * mass.bend;
        boolean yaws = spec.yawHz() < Double.POSITIVE_INFINITY;
        boolean bends = spec.bendingHz() < Double.POSITIVE_INFINITY;
        if (yaws && bends) {
            double yawStiffness = inertia * spec.yawHz() * spec.yawHz();
            double bendStiffness = bend * spec.bendingHz() * spec.bendingHz();
            // Roots, as squares of frequencies, of (I λ − Ky)(2m λ − Kb) = (2p)² λ².
            double a = inertia * bend - both * both;
            double b = yawStiffness * bend + bendStiffness * inertia;
            double c = yawStiffness * bendStiffness;
            double larger = (b + Math.sqrt(b * b - 4 * a * c)) / (2 * a);
            double smaller = c / (a * larger);
            double[] slowShape = shape(inertia, both, bend, yawStiffness, smaller);
            double[] fastShape = shape(inertia, both, bend, yawStiffness, larger);
            this.slow = new Mode(Math.sqrt(smaller), spec.yawDampingRatio());
            this.fast = new Mode(Math.sqrt(larger), spec.bendingDampingRatio());
            this.slowYaw = slowShape[0];
            this.slowBend = slowShape[1];
            this.fastYaw = fastShape[0];
            this.fastBend = fastShape[1];
            this.slowDrive = slowYaw * inertia + slowBend * both;
            this.fastDrive = fastYaw * inertia + fastBend * both;
            this.yawRest = 0;
            this.bendRest = 0;
        } else {
            // Each alone; a rigid one is a mode that is where its target is.
            this.slow = new Mode(spec.yawHz(), spec.yawDampingRatio());
            this.fast = new Mode(spec.bendingHz(), spec.bendingDampingRatio());
            this.slowYaw = yaws ? 1 : 0;
            this.slowBend = 0;
            this.slowDrive = 1;
            this.fastYaw = 0;
            this.fastBend = bends ? 1 : 0;
            this.fastDrive = both / bend;
            this.yawRest = 1 - slowYaw;
            this.bendRest = -fastBend * fastDrive;
        }
    }

    /** The normal mode's shape (yaw, bending), of unit modal mass. */
    private static double[] shape(double inertia, double both, double bend, double yawStiffness, double square) {
        double ratio = (yawStiffness - square * inertia) / (square * both);
        double scale = 1 / Math.sqrt(inertia + 2 * both * ratio + bend * ratio * ratio);
        return new double[] {scale, ratio * scale};
    }

    /** Straight, and moving with the machine at whatever even speed the first step will have. */
    void place(Chassis chassis, double xM, double yM, double cos, double sin, double headingRad) {
        this.xM = xM;
        this.yM = yM;
        this.cos = cos;
        this.sin = sin;
        this.headingRad = headingRad;
        asideRad = 0;
        travelM = 0;
        moving = false;
        steered.place(chassis.crossSlopeMpm());
        rockM = -spec.pitchArmM() * chassis.pitchMpm();
        rockSpeed = 0;
        yawRad = 0;
        yawSpeed = 0;
        oppositeM = 0;
        oppositeSpeed = 0;
        alikeM = 0;
        alikeSpeed = 0;
        meanSpeed = 0;
        meanYawRate = 0;
        meanTurning = 0;
    }

    void step(double dtS, Chassis chassis, double toX, double toY, double toCos, double toSin, double toHeading) {
        double wayM = 0.5 * ((toX - xM) * (cos + toCos) + (toY - yM) * (sin + toSin));
        double speed = wayM / dtS;
        double yawRate = (toHeading - headingRad) / dtS;
        if (!moving) {
            moving = true;
            slow.placeMoving(slowDrive * headingRad, slowDrive * yawRate);
            fast.placeMoving(fastDrive * headingRad, fastDrive * yawRate);
            alike.placeMoving(alikeDrive * (travelM + rockM), alikeDrive * speed);
            meanSpeed = speed;
            meanYawRate = yawRate;
            meanTurning = yawRate;
        }
        xM = toX;
        yM = toY;
        cos = toCos;
        sin = toSin;
        steered.step(dtS, chassis.crossSlopeMpm());
        double aside = spec.yawPerCrossSlope() * (chassis.crossSlopeMpm() - steered.value());
        double turning = yawRate + (aside - asideRad) / dtS;
        asideRad = aside;
        headingRad = toHeading;
        travelM += wayM;
        rockM = -spec.pitchArmM() * chassis.pitchMpm();
        rockSpeed = -spec.pitchArmM() * chassis.pitchSpeed();
        slow.step(dtS, slowDrive * (headingRad + asideRad));
        fast.step(dtS, fastDrive * (headingRad + asideRad));
        alike.step(dtS, alikeDrive * (travelM + rockM));

        // Speeds at the end of the step, from the means over this step and the one before: of second order.
        double speedNow = speed + 0.5 * (speed - meanSpeed);
        double yawRateNow = yawRate + 0.5 * (yawRate - meanYawRate);
        double turningNow = turning + 0.5 * (turning - meanTurning);
        meanSpeed = speed;
        meanYawRate = yawRate;
        meanTurning = turning;

        yawRad = asideRad + slowYaw * slow.offset() + fastYaw * fast.offset();
        yawSpeed = slowYaw * slow.speed() + fastYaw * fast.speed() + yawRest * turningNow - yawRateNow;
        oppositeM = slowBend * slow.offset() + fastBend * fast.offset();
        oppositeSpeed = slowBend * slow.speed() + fastBend * fast.speed() + bendRest * turningNow;
        alikeM = alike.offset();
        alikeSpeed = fastBend == 0 ? 0 : alike.speed() - alikeDrive * (speedNow + rockSpeed);
    }

    /** How far ahead a place is, m. */
    double forwardM(double rightM, double shape) {
        double bent = alikeM + (rightM < 0 ? oppositeM : -oppositeM);
        return rockM - rightM * yawRad + shape * bent;
    }

    /** How fast that grows, m/s. */
    double forwardSpeedMps(double rightM, double shape) {
        double bent = alikeSpeed + (rightM < 0 ? oppositeSpeed : -oppositeSpeed);
        return rockSpeed - rightM * yawSpeed + shape * bent;
    }

    /** {@link #forwardM} and {@link #forwardSpeedMps} of many places, whose shape is 0 where they are not on that wing. */
    void forward(
            double[] rightM, double[] leftShape, double[] rightShape, double[] aheadM, double[] speedMps, int from) {
        double rock = rockM;
        double yaw = yawRad;
        double left = alikeM + oppositeM;
        double right = alikeM - oppositeM;
        for (int i = 0; i < rightM.length; i++) {
            aheadM[from + i] = rock - rightM[i] * yaw + (leftShape[i] * left + rightShape[i] * right);
        }
        double rocking = rockSpeed;
        double yawing = yawSpeed;
        double leftBends = alikeSpeed + oppositeSpeed;
        double rightBends = alikeSpeed - oppositeSpeed;
        for (int i = 0; i < rightM.length; i++) {
            speedMps[from + i] = rocking - rightM[i] * yawing + (leftShape[i] * leftBends + rightShape[i] * rightBends);
        }
    }

    double yawRad() {
        return yawRad;
    }

    /** Energy of the three modes in the units of {@link WingMass}, a mass per metre of 1 at the hinge. */
    double energy(WingMass mass) {
        return slow.energy() + fast.energy() + 2 * mass.bend * alike.energy();
    }
}
