package evenfall.sim.boom;

import evenfall.sim.ground.Ground;
import evenfall.sim.vehicle.Mode;

/**
 * The soil under three places of each wing: the tip, the middle, and the middle between these.
 *
 * <p>A place that is p under the ground and rises over it at v gets a blow that changes v by what a spring
 * and damper would do to it over the step, taken at the step's end:
 *
 * <pre>  Δv = dt (ω² (p − dt v) − 2ζω v) / (1 + 2ζω dt + ω² dt²),   at least 0</pre>
 *
 * <p>(Euler's backward step), which no step is too long for and which takes energy away rather than adding any.
 * The blow that does this follows from how readily roll and bending give way there. Two places that mirror
 * each other are judged before either is struck, so that left and right are alike.
 *
 * <p>A place is looked at again only when it could have come down to the ground, at 10 m/s.
 */
final class SoilContact {

    private static final double[] WING_SHARES = {1.0, 0.75, 0.5};
    private static final double FASTEST_MPS = 10;

    private final boolean there;
    private final double omega;
    private final double zeta;
    private final double hingeM;
    private final Place[] lefts = new Place[WING_SHARES.length];
    private final Place[] rights = new Place[WING_SHARES.length];
    private double rollBlow;

    private static final class Place {
        final double rightM;
        final double beyondM;
        final double rollPerBlow;
        final double bendPerBlow;
        final double risePerBlow;
        double groundM;
        int waited;
        int wait;

        Place(double rightM, double beyondM, double rollPerBlow, double bendPerBlow, double risePerBlow) {
            this.rightM = rightM;
            this.beyondM = beyondM;
            this.rollPerBlow = rollPerBlow;
            this.bendPerBlow = bendPerBlow;
            this.risePerBlow = risePerBlow;
        }
    }

    SoilContact(BoomSpec spec) {
        WingMass mass = new WingMass(spec);
        boolean rolls = spec.rollModeHz() < Double.POSITIVE_INFINITY;
        boolean bends = spec.bendingHz() < Double.POSITIVE_INFINITY;
        this.there = spec.soil().contactHz() > 0 && (rolls || bends);
        this.omega = 2 * StrictMath.PI * spec.soil().contactHz();
        this.zeta = spec.soil().dampingRatio();
        this.hingeM = spec.hingeM();
        for (int i = 0; i < WING_SHARES.length; i++) {
            double beyond = WING_SHARES[i] * mass.lengthM;
            double away = hingeM + beyond;
            double shape = mass.shape(away);
            double roll = rolls ? away / mass.boomInertia : 0;
            double bend = bends ? shape / mass.bend : 0;
            // A wing whose root is swung up stays behind with its tip.
            double lag = bends ? mass.turnByBend / mass.bend : 0;
            double rise = away * roll + shape * (bend - lag * roll);
            lefts[i] = new Place(-away, beyond, -roll, bend, rise);
            rights[i] = new Place(away, beyond, roll, bend, rise);
        }
    }

    void place(Ground ground, double xM, double yM, double cos, double sin) {
        for (Place[] wing : new Place[][] {lefts, rights}) {
            for (Place at : wing) {
                at.groundM = ground.heightM(xM - at.rightM * sin, yM + at.rightM * cos);
                at.waited = 0;
                at.wait = 0;
            }
        }
    }

    void carry(
            double dtS,
            Ground ground,
            double xM,
            double yM,
            double cos,
            double sin,
            double centreHeightM,
            double centreSpeedMps,
            Mode roll,
            Wing left,
            Wing right) {
        rollBlow = 0;
        if (!there) {
            return;
        }
        boolean struck = false;
        for (int i = 0; i < WING_SHARES.length; i++) {
            double leftBlow = 0;
            double rightBlow = 0;
            if (isDue(lefts[i])) {
                double under = groundUnder(lefts[i], ground, xM, yM, cos, sin);
                leftBlow = blow(dtS, lefts[i], under, centreHeightM, centreSpeedMps, roll, left);
            }
            if (isDue(rights[i])) {
                double under = groundUnder(rights[i], ground, xM, yM, cos, sin);
                rightBlow = blow(dtS, rights[i], under, centreHeightM, centreSpeedMps, roll, right);
            }
            if (leftBlow > 0 || rightBlow > 0) {
                double turn = leftBlow * lefts[i].rollPerBlow + rightBlow * rights[i].rollPerBlow;
                roll.push(turn);
                rollBlow += turn;
                struck = true;
                left.push(leftBlow * lefts[i].bendPerBlow);
                right.push(rightBlow * rights[i].bendPerBlow);
                left.settle(centreSpeedMps - hingeM * roll.speed(), -roll.speed());
                right.settle(centreSpeedMps + hingeM * roll.speed(), roll.speed());
            }
        }
        if (struck) {
            double turning = roll.speed() - 0.5 * rollBlow;
            left.settleInTheMiddle(centreSpeedMps - hingeM * turning, -turning);
            right.settleInTheMiddle(centreSpeedMps + hingeM * turning, turning);
        }
    }

    /** What the blows of the last step did to the speed of the roll. */
    double rollBlow() {
        return rollBlow;
    }

    private static boolean isDue(Place at) {
        at.waited++;
        return at.waited > at.wait;
    }

    private static double groundUnder(Place at, Ground ground, double xM, double yM, double cos, double sin) {
        return ground.heightM(xM - at.rightM * sin, yM + at.rightM * cos);
    }

    private double blow(
            double dtS, Place at, double under, double centreHeightM, double centreSpeedMps, Mode roll, Wing wing) {
        double groundRise = (under - at.groundM) / (at.waited * dtS);
        at.groundM = under;
        at.waited = 0;
        double deepM = under - (centreHeightM + at.rightM * roll.value() + wing.heightM(at.beyondM));
        if (deepM <= 0) {
            at.wait = (int) (-deepM / (FASTEST_MPS * dtS));
            return 0;
        }
        at.wait = 0;
        double rise = centreSpeedMps + at.rightM * roll.speed() + wing.speedMps(at.beyondM) - groundRise;
        double change = dtS
                * (omega * omega * (deepM - dtS * rise) - 2 * zeta * omega * rise)
                / (1 + 2 * zeta * omega * dtS + omega * omega * dtS * dtS);
        return Math.max(0, change) / at.risePerBlow;
    }
}
