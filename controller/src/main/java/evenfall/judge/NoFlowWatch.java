package evenfall.judge;

import evenfall.liquid.Application;
import evenfall.quantity.TradeUnits;
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import evenfall.sense.Quantity;

/** The machine travels with sections on, and next to nothing flows. */
final class NoFlowWatch implements Watch {
    /** Below this part of what the target takes it is over; the pass is lost. */
    private static final double OVER_PART = 0.1;

    /** From this part on something flows again. Our choice: twice the limit. */
    private static final double WELL_PART = 0.2;

    private final boolean switchesFitted;
    private final double targetM;
    private final double spacingM;
    private final Units units;

    NoFlowWatch(Rig rig) {
        switchesFitted = rig.sensors().sectionsPort().isPresent();
        targetM = rig.target().rateM();
        spacingM = rig.boom().spacingM();
        units = rig.units();
    }

    @Override
    public Verdict verdict(Situation now) {
        // The rate is known faster than walking pace with a section on only. Without switches a turn looks the same as
        // a failure.
        if (!switchesFitted || !now.rateError().isKnown()) {
            return Verdict.UNKNOWN;
        }
        double part = now.rateError().get() + 1;
        return Verdict.below(part, OVER_PART, WELL_PART);
    }

    @Override
    public Finding finding(Situation now) {
        Quantity flow = now.plumbing().flowM3ps();
        double speedMps = now.speedMps().get();
        double wantedM3ps = Application.flowM3ps(
                targetM, speedMps, now.plumbing().openOutlets().get() * spacingM);
        String why = "The machine travels at " + units.speed(speedMps) + " with sections on, but "
                + units.boomFlow(flow.get()) + " flow where " + units.boomFlow(wantedM3ps) + " are wanted.";
        return new Finding(
                flow.get() / TradeUnits.LPM_M3PS,
                OVER_PART * wantedM3ps / TradeUnits.LPM_M3PS,
                "L/min",
                why,
                "Stop and look: if nothing runs, at tank, pump, main valve and strainer; if the outlets run, at the meter and its cable.");
    }
}
