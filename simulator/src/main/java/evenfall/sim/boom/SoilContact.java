package evenfall.sim.boom;

import evenfall.sim.ground.Ground;
import evenfall.sim.vehicle.Mode;

/**
 * The soil under four places of the boom: the tips and the middles of the wings.
 *
 * <p>A place that is p under the ground and rises over it at v gets a blow that changes v by what a spring
 * and damper would do to it over the step, taken at the step's end:
 *
 * <pre>  Δv = dt (ω² (p − dt v) − 2ζω v) / (1 + 2ζω dt + ω² dt²),   at least 0</pre>
 *
 * <p>(Euler's backward step), which no step is too long for and which takes energy away rather than adding any.
 * The blow that does this follows from how readily roll and bending give way there.
 */
final class SoilContact {

    private static final double[] WING_SHARES = {1.0, 0.5};
    private static final int PLACES = 4;

    private final boolean there;
    private final double omega;
    private final double zeta;
    private final double hingeM;
    private final double[] rightM = new double[PLACES];
    private final double[] beyondM = new double[PLACES];
    private final double[] rollPerBlow = new double[PLACES];
    private final double[] bendPerBlow = new double[PLACES];
    private final double[] risePerBlow = new double[PLACES];
    private final double[] groundM = new double[PLACES];

    SoilContact(BoomSpec spec) {
        WingMass mass = new WingMass(spec);
        boolean rolls = spec.rollModeHz() < Double.POSITIVE_INFINITY;
        boolean bends = spec.bendingHz() < Double.POSITIVE_INFINITY;
        this.there = spec.soil().contactHz() > 0 && (rolls || bends);
        this.omega = 2 * StrictMath.PI * spec.soil().contactHz();
        this.zeta = spec.soil().dampingRatio();
        this.hingeM = spec.hingeM();
        for (int i = 0; i < PLACES; i++) {
            double beyond = WING_SHARES[i / 2] * mass.lengthM;
            double away = hingeM + beyond;
            double shape = mass.shape(away);
            double roll = rolls ? away / mass.boomInertia : 0;
            double bend = bends ? shape / mass.bend : 0;
            rightM[i] = i % 2 == 0 ? -away : away;
            beyondM[i] = beyond;
            rollPerBlow[i] = i % 2 == 0 ? -roll : roll;
            bendPerBlow[i] = bend;
            // A wing whose root is swung up stays behind with its tip.
            double lag = bends ? mass.turnByBend / mass.bend : 0;
            risePerBlow[i] = away * roll + shape * (bend - lag * roll);
        }
    }

    void place(Ground ground, double xM, double yM, double cos, double sin) {
        for (int i = 0; i < PLACES; i++) {
            groundM[i] = ground.heightM(xM - rightM[i] * sin, yM + rightM[i] * cos);
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
        if (!there) {
            return;
        }
        for (int i = 0; i < PLACES; i++) {
            double before = groundM[i];
            double under = ground.heightM(xM - rightM[i] * sin, yM + rightM[i] * cos);
            groundM[i] = under;
            Wing wing = i % 2 == 0 ? left : right;
            double deepM = under - (centreHeightM + rightM[i] * roll.value() + wing.heightM(beyondM[i]));
            if (deepM > 0) {
                double rise =
                        centreSpeedMps + rightM[i] * roll.speed() + wing.speedMps(beyondM[i]) - (under - before) / dtS;
                double change = dtS
                        * (omega * omega * (deepM - dtS * rise) - 2 * zeta * omega * rise)
                        / (1 + 2 * zeta * omega * dtS + omega * omega * dtS * dtS);
                if (change > 0) {
                    double blow = change / risePerBlow[i];
                    roll.push(blow * rollPerBlow[i]);
                    wing.push(blow * bendPerBlow[i]);
                    left.settle(centreSpeedMps - hingeM * roll.speed(), -roll.speed());
                    right.settle(centreSpeedMps + hingeM * roll.speed(), roll.speed());
                }
            }
        }
    }
}
