package evenfall.judge;

import static evenfall.quantity.FixedDecimals.text;

import evenfall.quantity.Units;
import evenfall.rig.Rig;

/** The rate over the whole boom against its target. */
final class RateWatch implements Watch {
    /** Clears at six tenths of the limit: far enough below it that the lag of a rate controller does not raise it anew. Our choice. */
    private static final double WELL_PART = 0.6;

    private final boolean high;
    private final double limit;
    private final double targetM;
    private final Units units;

    RateWatch(boolean high, Rig rig) {
        this.high = high;
        this.limit = rig.limits().rateError();
        this.targetM = rig.target().rateM();
        this.units = rig.units();
    }

    @Override
    public Verdict verdict(Situation now) {
        if (!now.rateError().isKnown()) {
            return Verdict.UNKNOWN;
        }
        double excess = high ? now.rateError().get() : -now.rateError().get();
        return Verdict.above(excess, limit, WELL_PART * limit);
    }

    @Override
    public Finding finding(Situation now) {
        double error = now.rateError().get();
        String why = units.rate(targetM * (1 + error)) + " falls where " + units.rateNumber(targetM) + " is wanted ("
                + (error > 0 ? "+" : "") + text(100 * error, 0) + " %).";
        String act = high
                ? "Drive at an even speed; if it stays high, lower the pressure and check the meter and the controller's target."
                : "Drive slower or raise the pressure; if it stays low, look at strainers, pump and closed sections.";
        return new Finding(100 * error, high ? 100 * limit : -100 * limit, "%", why, act);
    }
}
