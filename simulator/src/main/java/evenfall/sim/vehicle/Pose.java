package evenfall.sim.vehicle;

/**
 * Where the machine is and which way it looks: the point under the boom's hanging point, and its heading.
 *
 * <p>x is forward along the first pass and y to the right of it; the heading turns to the right as seen from
 * above, like a compass, and goes on counting: a full circle to the right is 2π, not 0. With heading 0 every
 * place is the plain sum that it is on a straight pass, to the last bit.
 *
 * @param xM m
 * @param yM m
 * @param headingRad rad, positive to the right, without jumps from one pose to the next
 * @param cos cosine of the heading
 * @param sin sine of the heading
 */
public record Pose(double xM, double yM, double headingRad, double cos, double sin) {

    /** @param headingRad rad, positive to the right */
    public static Pose of(double xM, double yM, double headingRad) {
        return headingRad == 0
                ? straight(xM, yM)
                : new Pose(xM, yM, headingRad, StrictMath.cos(headingRad), StrictMath.sin(headingRad));
    }

    /** Looking along the first pass. */
    public static Pose straight(double xM, double yM) {
        return new Pose(xM, yM, 0, 1, 0);
    }

    /** x of a place this far to the right of the machine, m. */
    public double groundX(double rightM) {
        return xM - rightM * sin;
    }

    /** y of a place this far to the right of the machine, m. */
    public double groundY(double rightM) {
        return yM + rightM * cos;
    }

    /** x of a place this far ahead and to the right of the machine, m. */
    public double groundX(double aheadM, double rightM) {
        return xM + aheadM * cos - rightM * sin;
    }

    /** y of a place this far ahead and to the right of the machine, m. */
    public double groundY(double aheadM, double rightM) {
        return yM + aheadM * sin + rightM * cos;
    }
}
