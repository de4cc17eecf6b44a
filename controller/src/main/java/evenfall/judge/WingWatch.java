package evenfall.judge;

import static evenfall.quantity.FixedDecimals.text;

import evenfall.outlet.OutletType;
import evenfall.quantity.TradeUnits;
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

    WingWatch(boolean left, boolean low, Rig rig) {
        this.left = left;
        this.low = low;
        this.limits = new WingLimits(rig.limits());
        this.outlet = rig.outlet();
        this.targetM = rig.target().heightM();
    }

    @Override
    public AlertKind kind() {
        return low ? AlertKind.WING_LOW : AlertKind.WING_HIGH;
    }

    @Override
    public String place() {
        return left ? "left" : "right";
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
        String why = "The " + wing + " wing is at " + text(heightM, 2) + " m; ";
        if (limits.boundByRows(low, now.window())) {
            why += outlet.id() + " at " + text(now.pressurePa().get() / TradeUnits.KPA_PA, 0)
                    + " kPa feeds rows evenly from " + text(lowM, 2) + " to " + text(highM, 2) + " m.";
        } else {
            why += low
                    ? "the outlets need " + text(lowM, 2) + " m of clearance."
                    : "above " + text(highM, 2) + " m wind takes the streams.";
        }
        String act = (low ? "Raise" : "Lower") + " the " + wing + " wing to " + text(targetM, 2) + " m"
                + (low ? "; slow down before rough ground." : ".");
        return new Finding(heightM, low ? lowM : highM, "m", why, act);
    }
}
