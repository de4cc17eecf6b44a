package evenfall.judge;

import evenfall.outlet.OutletType;
import evenfall.quantity.TradeUnits;
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import evenfall.sense.Quantity;

/** The pressure outside what the outlets are made for, while they run. */
final class PressureWatch implements Watch {
    /** Clears this part of a bound inside it: well above a transmitter's noise. Our choice. */
    private static final double MARGIN = 0.03;

    /** Less flows than this part of what is wanted: then the pressure is the least of it. */
    private static final double NO_FLOW = 0.1 - 1;

    private final OutletType outlet;
    private final double specificGravity;
    private final double rateM;
    private final double spacingM;
    private final double walkingMps;
    private final Units units;

    PressureWatch(Rig rig) {
        outlet = rig.outlet();
        specificGravity = rig.liquid().specificGravity();
        rateM = rig.target().rateM();
        spacingM = rig.boom().spacingM();
        walkingMps = rig.limits().walkingMps();
        units = rig.units();
    }

    @Override
    public Verdict verdict(Situation now) {
        Quantity pressure = now.plumbing().pressurePa();
        Quantity open = now.plumbing().openOutlets();
        boolean runs = pressure.isKnown()
                && open.isKnown()
                && open.get() > 0
                && now.speedMps().isKnown()
                && now.speedMps().get() >= walkingMps;
        if (!runs || (now.rateError().isKnown() && now.rateError().get() < NO_FLOW)) {
            return Verdict.UNKNOWN;
        }
        return isLow(pressure.get())
                ? Verdict.below(pressure.get(), outlet.lowPa(), (1 + MARGIN) * outlet.lowPa())
                : Verdict.above(pressure.get(), outlet.highPa(), (1 - MARGIN) * outlet.highPa());
    }

    private boolean isLow(double pressurePa) {
        return pressurePa < 0.5 * (outlet.lowPa() + outlet.highPa());
    }

    @Override
    public Finding finding(Situation now) {
        double pressurePa = now.plumbing().pressurePa().get();
        boolean low = isLow(pressurePa);
        double boundPa = low ? outlet.lowPa() : outlet.highPa();
        String why = "The pressure is " + units.pressure(pressurePa) + "; " + outlet.id() + " outlets work from "
                + units.pressures(outlet.lowPa(), outlet.highPa()) + ".";
        return new Finding(
                pressurePa / TradeUnits.KPA_PA,
                boundPa / TradeUnits.KPA_PA,
                "kPa",
                why,
                remedy(low, boundPa, now.speedMps().get()));
    }

    /** Another speed where that speed's flow has its pressure inside; where this speed should have it already, the plumbing is at fault. */
    private String remedy(boolean low, double boundPa, double speedMps) {
        double boundMps = outlet.orifice().flowM3ps(boundPa, specificGravity) / (rateM * spacingM);
        boolean bySpeed = low ? speedMps < boundMps : speedMps > boundMps;
        if (bySpeed) {
            return low
                    ? "Drive faster than " + units.speed(boundMps) + ", or fit a smaller metering size."
                    : "Drive slower than " + units.speed(boundMps) + ", or fit a larger metering size.";
        }
        double neededPa = outlet.orifice().pressurePa(rateM * speedMps * spacingM, specificGravity);
        String needs =
                "; " + units.rate(rateM) + " at " + units.speed(speedMps) + " needs " + units.pressure(neededPa) + ".";
        return low
                ? "Look at pump, strainer and regulating valve" + needs
                : "Look for blocked outlets and closed sections" + needs;
    }
}
