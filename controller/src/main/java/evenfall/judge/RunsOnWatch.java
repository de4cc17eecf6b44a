package evenfall.judge;

import evenfall.liquid.Application;
import evenfall.quantity.TradeUnits;
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import evenfall.sense.Quantity;

/** Liquid runs although the machine stands or all sections are off. */
final class RunsOnWatch implements Watch {
    /** More than this part of what the whole machine takes at its target rate and 10 km/h. */
    private static final double OVER_PART = 0.02;

    private static final double MACHINE_MPS = 10 / 3.6;

    /** A flow that halves within so many looks is on its way out: a dribble, not a leak. 1.4 s, our choice. */
    private static final int LOOKS_BACK = 7;

    private static final double FALLING = 0.5;

    private final double limitM3ps;
    private final double walkingMps;
    private final Units units;
    private final double[] before = new double[LOOKS_BACK];
    private int at;
    private long lookedUs = -1;
    private boolean falls;

    RunsOnWatch(Rig rig) {
        limitM3ps = OVER_PART
                * Application.flowM3ps(
                        rig.target().rateM(), MACHINE_MPS, rig.boom().widthM());
        walkingMps = rig.limits().walkingMps();
        units = rig.units();
    }

    @Override
    public Verdict verdict(Situation now) {
        Quantity flow = now.plumbing().flowM3ps();
        boolean switchesKnown = now.plumbing().openOutlets().isKnown();
        if (!flow.isKnown() || !(switchesKnown || now.speedMps().isKnown())) {
            return Verdict.UNKNOWN;
        }
        if (now.nowUs() != lookedUs) {
            lookedUs = now.nowUs();
            falls = flow.get() < FALLING * before[at];
            before[at] = flow.get();
            at = (at + 1) % LOOKS_BACK;
        }
        if ((!allOff(now) && !stands(now)) || falls) {
            return Verdict.WELL;
        }
        return Verdict.above(flow.get(), limitM3ps, 0.5 * limitM3ps);
    }

    private static boolean allOff(Situation now) {
        Quantity open = now.plumbing().openOutlets();
        return open.isKnown() && open.get() == 0;
    }

    private boolean stands(Situation now) {
        return now.speedMps().isKnown() && now.speedMps().get() < walkingMps;
    }

    @Override
    public Finding finding(Situation now) {
        double flowM3ps = now.plumbing().flowM3ps().get();
        boolean off = allOff(now);
        String why = units.boomFlow(flowM3ps)
                + (off ? " flow although all sections are off." : " flow while the machine stands.");
        String act = off
                ? "Shut the main valve and look along the boom for a section that stays open or a leak; if nothing runs, at the meter's"
                        + " cable."
                : "Shut the sections until the machine moves: what runs now lies on one spot.";
        return new Finding(flowM3ps / TradeUnits.LPM_M3PS, limitM3ps / TradeUnits.LPM_M3PS, "L/min", why, act);
    }
}
