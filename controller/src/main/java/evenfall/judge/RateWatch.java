package evenfall.judge;

import static evenfall.quantity.FixedDecimals.text;

import evenfall.detect.Noise;
import evenfall.detect.ShiftTest;
import evenfall.quantity.Units;
import evenfall.rig.Rig;

/**
 * The rate over the whole boom against its target, by a sequential test on the rate error.
 *
 * <p>The time that the limit has been passed counts from where the test's sum left zero, so a sure and lasting excess rises when the hold
 * is over and no later; what is not sure waits. A bias up to {@link #SILENT_PART} of the limit alarms once in {@link
 * Looks#BETWEEN_FALSE_ALARMS} at most; between that and the limit it may, after a while; from the limit on it does.
 */
final class RateWatch implements Watch {
    /** Clears at six tenths of the limit: far enough below it that the lag of a rate controller does not raise it anew. Our choice. */
    private static final double WELL_PART = 0.6;

    /** A bias up to this part of the limit stays silent. Our choice: no meter is known better than half a percent where ten is the limit. */
    private static final double SILENT_PART = 0.95;

    /** Less flows than this part of what is wanted: that nothing flows is an alert of its own. */
    private static final double NO_FLOW_PART = 0.1;

    /** An ordinary receiver scatters by less than that band, so it is a good guess: 20 s of looks. Our choice. */
    private static final int GUESS_LOOKS = 100;

    private final boolean high;
    private final double limit;
    private final double targetM;
    private final Units units;
    private final Noise noise;
    private final ShiftTest test;
    private long lookedUs = -1;

    RateWatch(boolean high, Rig rig) {
        this.high = high;
        this.limit = rig.limits().rateError();
        this.targetM = rig.target().rateM();
        this.units = rig.units();
        double band = (1 - SILENT_PART) * limit;
        // No finer than the band, so that the least reference lies at the limit and not below it.
        noise = new Noise(band, GUESS_LOOKS);
        test = new ShiftTest(Looks.BETWEEN_FALSE_ALARMS, 2 * band, 0.5 * limit, 2 * limit);
    }

    @Override
    public Verdict verdict(Situation now) {
        boolean unknown = !now.rateError().isKnown();
        if (unknown || isNoFlow(now.rateError().get())) {
            noise.gap();
            test.reset();
            // Of flow that has stopped the rate is known, and another alert speaks; a low one has nothing to add.
            return unknown || !high ? Verdict.UNKNOWN : Verdict.WELL;
        }
        double excess = high ? now.rateError().get() : -now.rateError().get();
        if (now.nowUs() != lookedUs) {
            lookedUs = now.nowUs();
            noise.take(excess);
            test.take(excess - SILENT_PART * limit, noise.effective());
        }
        if (test.isSure()) {
            return Verdict.OVER;
        }
        if (test.isLeaning()) {
            return Verdict.LEANING;
        }
        return excess <= WELL_PART * limit ? Verdict.WELL : Verdict.BETWEEN;
    }

    private static boolean isNoFlow(double error) {
        return error < NO_FLOW_PART - 1;
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
