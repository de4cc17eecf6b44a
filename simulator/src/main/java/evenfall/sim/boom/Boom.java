package evenfall.sim.boom;

import evenfall.sim.ground.Ground;
import evenfall.sim.vehicle.Chassis;
import evenfall.sim.vehicle.Mode;
import evenfall.sim.vehicle.Pose;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoublePredicate;
import org.jspecify.annotations.Nullable;

/**
 * The moving boom. Its height at a place y metres right of the centre follows from geometry alone:
 *
 * <pre>  z(y) = centre + roll · y + tilt · s + bend · (s/L)²,   s = max(0, |y| − hinge)</pre>
 *
 * <p>with roll and tilt as slopes and bend as the deflection of the tip, so that a plane stays a plane; the
 * height over the ground is z(y) less the ground straight under that place. Shortening of the boom's reach
 * by its slope (0.5 % at 10 %) is left out. A wing that strikes the ground is carried by the soil
 * ({@link SoilContactSpec}), crudely, and then reads heights a little below zero; so does a boom without wings
 * that give way, or without soil in its spec, for as long as it is down there.
 *
 * <p>The centre section rises and falls with the hanging point and the lift. It rolls on its own
 * suspension, which takes over a share of the chassis's roll at once and the rest slowly. The wings bend
 * ({@link Wing}) and are tilted by the height control. Roll and bending are {@link Mode}s, exact for
 * evenly moving targets; the errors that remain come from taking the ground, and roll as what moves the
 * wings, as evenly moving over a step, and fall with its square (with the step itself where the height
 * control switches in and out).
 *
 * <p>In the horizontal it sways ({@link SwaySpec}), which heights do not feel: they are those of the rigid
 * boom's places over the ground.
 *
 * <p>Order of use: {@link Chassis#step} and then {@link #step}, both with the same place and length of
 * step; then any of the readings. One owner, one thread.
 */
public final class Boom {

    /** Speed at which the boom goes to another set height, m/s; a choice of ours. */
    private static final double SET_MPS = 0.1;

    private final BoomSpec spec;
    private final double[] outletRightM;
    private final double[] outletBeyondM;
    private final double[] outletShape;

    // For each wing's own outlets, and 0 for all others: sums over both wings need no branch.
    private final double[] leftWing;
    private final double[] rightWing;
    private final double[] leftBeyondM;
    private final double[] rightBeyondM;
    private final double[] leftShape;
    private final double[] rightShape;
    private final double perWingSquareM;
    private final Mode roll;
    private final Lag levelled;
    private final Wing left;
    private final Wing right;
    private final HeightControl leftControl;
    private final HeightControl rightControl;
    private final HeightControl liftControl;
    private final Sway sway;
    private final boolean sways;
    private final SoilContact soil;

    private double stepS;
    private @Nullable Ground ground;
    private double xM;
    private double yM;
    private double cos = 1;
    private double sin;
    private double liftM;
    private double centreHeightM;
    private double centreSpeedMps;
    private double rollSpeed;
    private double leftDrive = 1;
    private double rightDrive = 1;
    private double controlDrive = 1;
    private double setWrongM;
    private double setMovedM;

    /**
     * @param outletRightM where the outlets sit, m right of the centre, in the order of their numbers
     * @throws IllegalArgumentException when one is not on the boom
     */
    public Boom(BoomSpec spec, double[] outletRightM) {
        this.spec = spec;
        this.outletRightM = outletRightM.clone();
        this.outletBeyondM = new double[outletRightM.length];
        this.outletShape = new double[outletRightM.length];
        this.leftWing = new double[outletRightM.length];
        this.rightWing = new double[outletRightM.length];
        this.leftBeyondM = new double[outletRightM.length];
        this.rightBeyondM = new double[outletRightM.length];
        this.leftShape = new double[outletRightM.length];
        this.rightShape = new double[outletRightM.length];
        double wingM = spec.halfWidthM() - spec.hingeM();
        this.perWingSquareM = 1 / (wingM * wingM);
        for (int i = 0; i < this.outletRightM.length; i++) {
            double at = this.outletRightM[i];
            if (!(Math.abs(at) <= spec.halfWidthM())) {
                throw new IllegalArgumentException("outlet at " + at + " m is not on the boom, which reaches "
                        + spec.halfWidthM() + " m to each side");
            }
            outletBeyondM[i] = Math.max(0, Math.abs(at) - spec.hingeM());
            outletShape[i] = outletBeyondM[i] / wingM * (outletBeyondM[i] / wingM);
            (at < 0 ? leftWing : rightWing)[i] = outletBeyondM[i] > 0 ? 1 : 0;
            (at < 0 ? leftBeyondM : rightBeyondM)[i] = outletBeyondM[i];
            (at < 0 ? leftShape : rightShape)[i] = outletShape[i];
        }
        this.roll = new Mode(spec.rollModeHz(), spec.rollDampingRatio());
        this.levelled = new Lag(spec.levellingS());
        this.left = new Wing(spec);
        this.right = new Wing(spec);
        this.leftControl = wingControl(-1);
        this.rightControl = wingControl(1);
        HeightControlSpec control = spec.control();
        this.liftControl =
                new HeightControl(sensors(at -> Math.abs(at) <= spec.hingeM()), control, control.liftSlewMps(), 1);
        this.sway = new Sway(spec);
        this.sways = !spec.sway().isNone();
        this.soil = new SoilContact(spec);
    }

    private HeightControl wingControl(int side) {
        double[] sensors = sensors(at -> at * side > spec.hingeM());
        double arm = 0;
        for (double at : sensors) {
            arm += (Math.abs(at) - spec.hingeM()) / sensors.length;
        }
        return new HeightControl(
                sensors, spec.control(), spec.control().tipSlewMps() / (spec.halfWidthM() - spec.hingeM()), arm);
    }

    private double[] sensors(DoublePredicate chosen) {
        List<Double> found = new ArrayList<>();
        for (double at : spec.control().sensorRightM()) {
            if (chosen.test(at)) {
                found.add(at);
            }
        }
        double[] array = new double[found.size()];
        for (int i = 0; i < array.length; i++) {
            array[i] = found.get(i);
        }
        return array;
    }

    /**
     * Puts the boom at rest here, on a chassis that has been placed, looking along the first pass: parallel to
     * where its suspension rests, straight, at its set height under the hanging point, the control as if it had
     * always seen what it sees now. The first step does not start the machine with a jerk: it has always
     * had the speed of that step.
     *
     * @param dtS length of the steps to come, s
     */
    public void place(double dtS, Chassis chassis, Ground ground, double xM, double yM) {
        place(dtS, chassis, ground, xM, yM, 1, 0, 0);
    }

    /**
     * Puts the boom at rest anywhere; see the other one.
     *
     * @param dtS length of the steps to come, s
     */
    public void place(double dtS, Chassis chassis, Ground ground, Pose pose) {
        place(dtS, chassis, ground, pose.xM(), pose.yM(), pose.cos(), pose.sin(), pose.headingRad());
    }

    private void place(
            double dtS,
            Chassis chassis,
            Ground ground,
            double xM,
            double yM,
            double cos,
            double sin,
            double headingRad) {
        if (!(dtS > 0 && dtS < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("step must be above 0 s, not " + dtS);
        }
        this.stepS = dtS;
        this.ground = ground;
        this.xM = xM;
        this.yM = yM;
        this.cos = cos;
        this.sin = sin;
        this.liftM = 0;
        levelled.place(chassis.rollMpm());
        roll.place(rollTarget(chassis));
        centreHeightM = restHeightM(chassis);
        centreSpeedMps = 0;
        rollSpeed = 0;
        left.place(centreHeightM - spec.hingeM() * roll.value(), -roll.value());
        right.place(centreHeightM + spec.hingeM() * roll.value(), roll.value());
        leftControl.place(dtS, errorM(leftControl, ground));
        rightControl.place(dtS, errorM(rightControl, ground));
        liftControl.place(dtS, errorM(liftControl, ground));
        sway.place(chassis, xM, yM, cos, sin, headingRad);
        soil.place(ground, xM, yM, cos, sin);
    }

    /**
     * One step of time along the first pass, after the chassis has made it. The first step places the boom where
     * it ends.
     *
     * @param dtS length of the step, s: the same at every step
     * @param xM forward along the pass at the end of the step, m
     * @param yM to the right of the pass at the end of the step, m
     * @throws IllegalArgumentException when the length of the step changes: the control's delay is counted
     *     in steps
     */
    public void step(double dtS, Chassis chassis, Ground ground, double xM, double yM) {
        step(dtS, chassis, ground, xM, yM, 1, 0, 0);
    }

    /**
     * One step of time on any path, at whose end the machine has this pose; see the other one.
     *
     * @param dtS length of the step, s: the same at every step
     */
    public void step(double dtS, Chassis chassis, Ground ground, Pose pose) {
        step(dtS, chassis, ground, pose.xM(), pose.yM(), pose.cos(), pose.sin(), pose.headingRad());
    }

    private void step(
            double dtS,
            Chassis chassis,
            Ground ground,
            double xM,
            double yM,
            double cos,
            double sin,
            double headingRad) {
        if (this.ground == null) {
            place(dtS, chassis, ground, xM, yM, cos, sin, headingRad);
            return;
        }
        if (dtS != stepS) {
            throw new IllegalArgumentException("step must stay " + stepS + " s, not " + dtS);
        }
        this.ground = ground;
        this.xM = xM;
        this.yM = yM;
        this.cos = cos;
        this.sin = sin;
        HeightControlSpec control = spec.control();
        left.tilt(dtS, leftControl.speed(), control.wingTravelMpm());
        right.tilt(dtS, rightControl.speed(), control.wingTravelMpm());
        double lifted = liftM + liftControl.speed() * dtS;
        lifted = Math.max(-control.liftTravelM(), Math.min(control.liftTravelM(), lifted));
        double moved = Math.max(-SET_MPS * dtS, Math.min(SET_MPS * dtS, setWrongM - setMovedM));
        setMovedM += moved;
        centreSpeedMps = chassis.hangVerticalSpeedMps() + (lifted - liftM + moved) / dtS;
        liftM = lifted;
        centreHeightM = restHeightM(chassis) + liftM;

        levelled.step(dtS, chassis.rollMpm());
        roll.step(dtS, rollTarget(chassis));
        double hinge = spec.hingeM();
        double slope = roll.value();
        double turning = roll.speed();
        left.step(dtS, centreHeightM - hinge * slope, -slope, centreSpeedMps - hinge * turning, -turning);
        right.step(dtS, centreHeightM + hinge * slope, slope, centreSpeedMps + hinge * turning, turning);
        soil.carry(dtS, ground, xM, yM, cos, sin, centreHeightM, centreSpeedMps, roll, left, right);
        rollSpeed = roll.speed() - 0.5 * soil.rollBlow();
        if (sways) {
            sway.step(dtS, chassis, xM, yM, cos, sin, headingRad);
        }

        leftControl.see(dtS, errorM(leftControl, ground));
        rightControl.see(dtS, errorM(rightControl, ground));
        liftControl.see(dtS, errorM(liftControl, ground));
    }

    /**
     * One wing's actuator.
     *
     * @param left the left wing, else the right
     * @param share of its speed that it still has: 1 is whole, 0 is stuck
     */
    public void driveWing(boolean left, double share) {
        if (left) {
            leftDrive = share;
        } else {
            rightDrive = share;
        }
        drive();
    }

    /** @param share of its speed that the whole height control still has: 1 is whole, 0 is dead */
    public void driveControl(double share) {
        controlDrive = share;
        drive();
    }

    private void drive() {
        leftControl.drive(leftDrive * controlDrive);
        rightControl.drive(rightDrive * controlDrive);
        liftControl.drive(controlDrive);
    }

    /**
     * The operator sets another height.
     *
     * @param wrongM how much higher than the set height of the spec, m
     */
    public void setWrong(double wrongM) {
        setWrongM = wrongM;
    }

    private double rollTarget(Chassis chassis) {
        return spec.rollCoupling() * chassis.rollMpm() + (1 - spec.rollCoupling()) * levelled.value();
    }

    private double restHeightM(Chassis chassis) {
        return chassis.hangHeightM() - chassis.spec().hangHeightM() + spec.setHeightM() + setMovedM;
    }

    private double errorM(HeightControl control, Ground under) {
        double[] sensors = control.sensorRightM();
        if (sensors.length == 0) {
            return 0;
        }
        double sum = 0;
        for (double at : sensors) {
            sum += spec.setHeightM() + setMovedM - (boomM(at) - under.heightM(xM - at * sin, yM + at * cos));
        }
        return sum / sensors.length;
    }

    public BoomSpec spec() {
        return spec;
    }

    public int outletCount() {
        return outletRightM.length;
    }

    /** Where outlet i sits, m right of the centre. */
    public double outletRightM(int i) {
        return outletRightM[i];
    }

    /** Height of outlet i over the ground straight under it, m; below zero it is in the soil. */
    public double outletHeightM(int i) {
        return heightAtM(outletRightM[i]);
    }

    /**
     * Heights of all outlets over the ground under them, m: the same as {@link #outletHeightM} to a few
     * last digits, in less time.
     *
     * @param into as many places as there are outlets, at least
     */
    public void outletHeightsM(double[] into) {
        Ground under = placedOn();
        outletsOverDatumM(into, 0);
        for (int i = 0; i < outletRightM.length; i++) {
            into[i] -= under.heightM(xM - outletRightM[i] * sin, yM + outletRightM[i] * cos);
        }
    }

    // What follows reads all outlets at once, into rows that begin anywhere in an array: whoever works out several
    // moments
    // together has long rows, and needs the ground only once for all of them.

    /** Heights of all outlets over the datum, m. */
    public void outletsOverDatumM(double[] into, int from) {
        double slope = roll.value();
        double height = centreHeightM;
        double leftTilt = left.tiltMpm();
        double rightTilt = right.tiltMpm();
        double leftBend = left.tipBendM();
        double rightBend = right.tipBendM();
        for (int i = 0; i < outletRightM.length; i++) {
            into[from + i] = height
                    + outletRightM[i] * slope
                    + (leftTilt * leftBeyondM[i] + rightTilt * rightBeyondM[i])
                    + (leftBend * leftShape[i] + rightBend * rightShape[i]);
        }
    }

    /** Places on the ground straight under all outlets of a boom that does not sway, m along the first pass and right of it. */
    public void outletPlacesM(double[] x, double[] y, int from) {
        double startX = xM;
        double startY = yM;
        double ahead = -sin;
        double aside = cos;
        for (int i = 0; i < outletRightM.length; i++) {
            x[from + i] = startX + outletRightM[i] * ahead;
            y[from + i] = startY + outletRightM[i] * aside;
        }
    }

    /** {@link #outletRollRad} of all outlets. */
    public void outletRollsRad(double[] into, int from) {
        double slope = roll.value();
        double leftTilt = left.tiltMpm();
        double rightTilt = right.tiltMpm();
        double leftTwice = 2 * left.tipBendM() * perWingSquareM;
        double rightTwice = 2 * right.tipBendM() * perWingSquareM;
        for (int i = 0; i < outletRightM.length; i++) {
            double here = slope
                    - (leftTilt * leftWing[i] + leftTwice * leftBeyondM[i])
                    + (rightTilt * rightWing[i] + rightTwice * rightBeyondM[i]);
            into[from + i] = arcTangent(here);
        }
    }

    /** {@link #outletVerticalSpeedMps} of all outlets. */
    public void outletVerticalSpeedsMps(double[] into, int from) {
        double centre = centreSpeedMps;
        double turning = rollSpeed;
        double leftTilts = left.tiltSpeed();
        double rightTilts = right.tiltSpeed();
        double leftBends = left.tipBendSpeedMps();
        double rightBends = right.tipBendSpeedMps();
        for (int i = 0; i < outletRightM.length; i++) {
            into[from + i] = centre
                    + outletRightM[i] * turning
                    + (leftTilts * leftBeyondM[i] + rightTilts * rightBeyondM[i])
                    + (leftBends * leftShape[i] + rightBends * rightShape[i]);
        }
    }

    /**
     * Vertical speed of outlet i, m/s, up: the boom's own, not that of the ground passing under it.
     */
    public double outletVerticalSpeedMps(int i) {
        double at = outletRightM[i];
        double beyond = Math.abs(at) - spec.hingeM();
        double speed = centreSpeedMps + at * rollSpeed;
        return beyond <= 0 ? speed : speed + (at < 0 ? left : right).speedMps(beyond);
    }

    /**
     * How far ahead outlet i is, m, of where a boom that does not sway would have it on a machine that keeps
     * its path; below zero it hangs back.
     */
    public double outletForwardM(int i) {
        return sways ? sway.forwardM(outletRightM[i], outletShape[i]) : 0;
    }

    /**
     * How much faster forward outlet i moves, m/s, than the same place of a boom that does not sway on a
     * machine that keeps its path: to be added to the speed that travel and turning give that place.
     */
    public double outletForwardSpeedMps(int i) {
        return sways ? sway.forwardSpeedMps(outletRightM[i], outletShape[i]) : 0;
    }

    /** {@link #outletForwardM} of all outlets, and {@link #outletForwardSpeedMps}. */
    public void outletsForward(double[] aheadM, double[] speedMps, int from) {
        if (sways) {
            sway.forward(outletRightM, leftShape, rightShape, aheadM, speedMps, from);
        } else {
            Arrays.fill(aheadM, from, from + outletRightM.length, 0);
            Arrays.fill(speedMps, from, from + outletRightM.length, 0);
        }
    }

    /** Whether outlet i is in the soil. */
    public boolean inSoil(int i) {
        return outletHeightM(i) < 0;
    }

    /** Yaw of the boom's centre against its path, rad, positive with the right side back. */
    public double yawRad() {
        return sways ? sway.yawRad() : 0;
    }

    /** Tilt of the boom at outlet i, rad, positive rising to the right. */
    public double outletRollRad(int i) {
        double at = outletRightM[i];
        double beyond = Math.abs(at) - spec.hingeM();
        double slope = roll.value();
        if (beyond > 0) {
            slope += at < 0 ? -left.slopeMpm(beyond) : right.slopeMpm(beyond);
        }
        return arcTangent(slope);
    }

    /** The arc tangent's series: within 10⁻⁵ rad up to a slope of 0.25, and a tenth of its cost. */
    private static double arcTangent(double slope) {
        double square = slope * slope;
        return slope * (1 - square * (1.0 / 3 - square * (1.0 / 5)));
    }

    /**
     * Height over the ground of any place on the boom, m.
     *
     * @param rightM right of the centre, m, within the boom
     */
    public double heightAtM(double rightM) {
        return boomM(rightM) - placedOn().heightM(xM - rightM * sin, yM + rightM * cos);
    }

    /**
     * Elevation of all outlets over the ground's datum, m; less {@link #outletHeightsM} it is that of the ground under them.
     *
     * @param into as many places as there are outlets, at least
     */
    public void outletElevationsM(double[] into) {
        for (int i = 0; i < outletRightM.length; i++) {
            into[i] = boomM(outletRightM[i]);
        }
    }

    private Ground placedOn() {
        if (ground == null) {
            throw new IllegalStateException("the boom has no height before it is placed");
        }
        return ground;
    }

    /** Height of the boom over the datum, m. */
    private double boomM(double rightM) {
        double height = centreHeightM + rightM * roll.value();
        double beyond = Math.abs(rightM) - spec.hingeM();
        return beyond <= 0 ? height : height + (rightM < 0 ? left : right).heightM(beyond);
    }

    /** Roll of the boom's centre section, rad, positive with the right side up. */
    public double rollRad() {
        return StrictMath.atan(roll.value());
    }

    /** Lift of the centre by the height control, m. */
    public double liftM() {
        return liftM;
    }

    /** Tilt of the left wing against the centre section, m per m, outward and up. */
    public double leftTiltMpm() {
        return left.tiltMpm();
    }

    /** Tilt of the right wing against the centre section, m per m, outward and up. */
    public double rightTiltMpm() {
        return right.tiltMpm();
    }

    /** Bend of the left wing's tip against the straight wing, m, up. */
    public double leftBendM() {
        return left.tipBendM();
    }

    /** Bend of the right wing's tip against the straight wing, m, up. */
    public double rightBendM() {
        return right.tipBendM();
    }
}
