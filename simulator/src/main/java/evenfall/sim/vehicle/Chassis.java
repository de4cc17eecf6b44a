package evenfall.sim.vehicle;

import evenfall.sim.ground.Ground;

/**
 * The moving chassis: heave, roll and pitch over the ground under its four wheels.
 *
 * <p>The machine's place (x, y) is the point under the boom's hanging point; the rear wheels are before
 * it, the front wheels further before. Angles are kept as slopes (rise per length, the tangent of the
 * angle), for which a plane under the wheels is a plane under the chassis without any small-angle error.
 *
 * <p>Left out: gravity pulling a leaning machine further over, wheels off the ground, longitudinal
 * slip, and the boom's reaction on the chassis.
 */
public final class Chassis {

    private final ChassisSpec spec;
    private final Mode heave;
    private final Mode roll;
    private final Mode pitch;
    private final double rearX;
    private final double frontX;
    private final double halfTrack;
    private final double quarterContact;
    private final double[] sunkM = new double[4];
    private double heaveSunkM;
    private double rollSunkMpm;
    private double pitchSunkMpm;
    private boolean placed;

    public Chassis(ChassisSpec spec) {
        this.spec = spec;
        this.heave = spec.heaveMode();
        this.roll = spec.rollMode();
        this.pitch = spec.pitchMode();
        this.rearX = spec.hangBehindRearAxleM();
        this.frontX = rearX + spec.wheelbaseM();
        this.halfTrack = spec.trackM() / 2;
        this.quarterContact = spec.contactLengthM() / 4;
    }

    /** Puts the machine at rest here, looking along the first pass, settled on its wheels. */
    public void place(Ground ground, double xM, double yM) {
        place(ground, xM, yM, 1, 0);
    }

    /** Puts the machine at rest here, settled on its wheels. */
    public void place(Ground ground, Pose pose) {
        place(ground, pose.xM(), pose.yM(), pose.cos(), pose.sin());
    }

    private void place(Ground ground, double xM, double yM, double cos, double sin) {
        double frontLeft = wheelM(ground, xM, yM, cos, sin, frontX, -halfTrack);
        double frontRight = wheelM(ground, xM, yM, cos, sin, frontX, halfTrack);
        double rearLeft = wheelM(ground, xM, yM, cos, sin, rearX, -halfTrack);
        double rearRight = wheelM(ground, xM, yM, cos, sin, rearX, halfTrack);
        heave.place((frontLeft + frontRight + rearLeft + rearRight) / 4);
        roll.place((frontRight + rearRight - frontLeft - rearLeft) / 2 / spec.trackM());
        pitch.place((frontLeft + frontRight - rearLeft - rearRight) / 2 / spec.wheelbaseM());
        placed = true;
    }

    /**
     * One step of time along the first pass, at whose end the machine is at this place. The first step places
     * the machine where the step ends, at rest.
     *
     * <p>Exact for wheels whose ground rises evenly over the step; the error of that falls with the square
     * of the step. 5 to 10 ms suit a machine in the field.
     *
     * @param dtS length of the step, s, above 0
     * @param xM forward along the pass at the end of the step, m
     * @param yM to the right of the pass at the end of the step, m
     */
    public void step(double dtS, Ground ground, double xM, double yM) {
        step(dtS, ground, xM, yM, 1, 0);
    }

    /**
     * One step of time on any path, at whose end the machine has this pose; see the other one.
     *
     * @param dtS length of the step, s, above 0
     */
    public void step(double dtS, Ground ground, Pose pose) {
        step(dtS, ground, pose.xM(), pose.yM(), pose.cos(), pose.sin());
    }

    private void step(double dtS, Ground ground, double xM, double yM, double cos, double sin) {
        if (!placed) {
            place(ground, xM, yM, cos, sin);
            return;
        }
        double frontLeft = wheelM(ground, xM, yM, cos, sin, frontX, -halfTrack);
        double frontRight = wheelM(ground, xM, yM, cos, sin, frontX, halfTrack);
        double rearLeft = wheelM(ground, xM, yM, cos, sin, rearX, -halfTrack);
        double rearRight = wheelM(ground, xM, yM, cos, sin, rearX, halfTrack);
        heave.step(dtS, (frontLeft + frontRight + rearLeft + rearRight) / 4 - heaveSunkM);
        roll.step(dtS, (frontRight + rearRight - frontLeft - rearLeft) / 2 / spec.trackM() - rollSunkMpm);
        pitch.step(dtS, (frontLeft + frontRight - rearLeft - rearRight) / 2 / spec.wheelbaseM() - pitchSunkMpm);
    }

    /** The ground as the tyre bridges it: the mean of the middles of both halves of its contact. */
    private double wheelM(Ground ground, double xM, double yM, double cos, double sin, double aheadM, double rightM) {
        double x = xM + aheadM * cos - rightM * sin;
        double y = yM + aheadM * sin + rightM * cos;
        double alongX = quarterContact * cos;
        double alongY = quarterContact * sin;
        return 0.5 * (ground.heightM(x - alongX, y - alongY) + ground.heightM(x + alongX, y + alongY));
    }

    /**
     * A tyre that has lost air: its axle end sits lower.
     *
     * @param wheel 0 front left, 1 front right, 2 rear left, 3 rear right
     * @param sunkM by how much, m; 0 makes it whole
     */
    public void soften(int wheel, double sunkM) {
        this.sunkM[wheel] = sunkM;
        heaveSunkM = (this.sunkM[0] + this.sunkM[1] + this.sunkM[2] + this.sunkM[3]) / 4;
        rollSunkMpm = (this.sunkM[1] + this.sunkM[3] - this.sunkM[0] - this.sunkM[2]) / 2 / spec.trackM();
        pitchSunkMpm = (this.sunkM[0] + this.sunkM[1] - this.sunkM[2] - this.sunkM[3]) / 2 / spec.wheelbaseM();
    }

    public ChassisSpec spec() {
        return spec;
    }

    /** Height of the centre of mass over where it is on level ground at the datum, m. */
    public double heaveM() {
        return heave.value();
    }

    /** Roll, rad, positive with the right side up. */
    public double rollRad() {
        return StrictMath.atan(roll.value());
    }

    /** Pitch, rad, positive with the nose up. */
    public double pitchRad() {
        return StrictMath.atan(pitch.value());
    }

    /** Roll as a slope: rise to the right, m per m. */
    public double rollMpm() {
        return roll.value();
    }

    /** Pitch as a slope: rise to the front, m per m. */
    public double pitchMpm() {
        return pitch.value();
    }

    /** How fast the pitch grows, 1/s: positive with the nose going up. */
    public double pitchSpeed() {
        return pitch.speed();
    }

    /** Rise of the ground to the right under the wheels, m per m: what the roll follows. */
    public double crossSlopeMpm() {
        return roll.target();
    }

    /** Height of the boom's hanging point over the datum, m. */
    public double hangHeightM() {
        return heave.value() - pitch.value() * hangBehindCentreM() + spec.hangHeightM();
    }

    /** Vertical speed of the hanging point, m/s, up. */
    public double hangVerticalSpeedMps() {
        return heave.speed() - pitch.speed() * hangBehindCentreM();
    }

    /** Roll of the frame that the boom hangs in, rad, positive with the right side up. */
    public double hangRollRad() {
        return rollRad();
    }

    private double hangBehindCentreM() {
        return spec.wheelbaseM() / 2 + rearX;
    }
}
