package evenfall.judge;

import evenfall.outlet.OutletType;
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import evenfall.sense.Quantity;

/** The outer half of one wing against the heights that it may take. */
final class WingWatch implements Watch {
    /** Back inside by this much it is well: about the noise of a height sensor over crop. Our choice. */
    private static final double MARGIN_M = 0.03;

    private final boolean left;
    private final boolean low;
    private final WingLimits limits;
    private final OutletType outlet;
    private final double targetM;
    private final Units units;

    WingWatch(boolean left, boolean low, Rig rig) {
        this.left = left;
        this.low = low;
        this.limits = new WingLimits(rig.limits());
        this.outlet = rig.outlet();
        this.targetM = rig.target().heightM();
        this.units = rig.units();
    }

    @Override
    public Verdict verdict(Situation now) {
        Quantity height = height(now);
        if (!height.isKnown()) {
            return Verdict.UNKNOWN;
        }
        double lowM = limits.lowM(now.window());
        double highM = limits.highM(now.window());
        // A window narrower than two margins would never clear; half of it must do then.
        double marginM = Math.min(MARGIN_M, 0.25 * (highM - lowM));
        return low
                ? Verdict.below(height.get(), lowM, lowM + marginM)
                : Verdict.above(height.get(), highM, highM - marginM);
    }

    private Quantity height(Situation now) {
        return left ? now.leftWingM() : now.rightWingM();
    }

    @Override
    public Finding finding(Situation now) {
        double heightM = height(now).get();
        double lowM = limits.lowM(now.window());
        double highM = limits.highM(now.window());
        String wing = left ? "left" : "right";
        String why = "The " + wing + " wing is at " + units.length(heightM) + "; ";
        if (limits.boundByRows(low, now.window())) {
            why += outlet.id() + " at " + units.pressure(now.pressurePa().get()) + " feeds rows evenly from "
                    + units.lengths(lowM, highM) + ".";
        } else {
            why += low
                    ? "the outlets need " + units.length(lowM) + " of clearance."
                    : "above " + units.length(highM) + " wind takes the streams.";
        }
        String act = (low ? "Raise" : "Lower") + " the " + wing + " wing to " + units.length(targetM)
                + (low ? "; slow down before rough ground." : ".");
        return new Finding(heightM, low ? lowM : highM, "m", why, act);
    }
}
