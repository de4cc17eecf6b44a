package evenfall.judge;

import static evenfall.quantity.FixedDecimals.text;

import evenfall.quantity.Units;
import evenfall.rig.Rig;

/**
 * A tip on its way to ground or crop: within the time that the rig says it may well be under the clearance. Looked at as often as
 * heights come, since a boom falls from its set height within about a second.
 *
 * <p>Most falls are swings that turn in time. So not the fall of now is judged but a forecast that knows swings, and how well it knows
 * them. Where the height that is expected is so many standard deviations above the clearance, the chance that it gets under it is Q of
 * that (the upper tail of the normal distribution): 16 % for the one of {@link #DEVIATIONS}. On a field where nothing comes near, the height
 * that is expected swings about its mean μ with a standard deviation s, and gets down to a level by chance {@code ν exp(−½ ((μ − level) /
 * s)²)} times a second, ν being how often it swings (S. O. Rice, Bell System Technical Journal 23, 1944, from memory). At one false alarm of
 * both tips in 1,000 hours and one swing a second the level must lie 5.6 s below the mean. On class C it lies 8 s below.
 */
final class StrikeWatch {
    /** Three looks in a row: one or two could be a loose sensor. Our choice, s. */
    static final double RAISE_S = 0.1;

    /** A boom swings through in one to three seconds; until it has, it may come again. Our choice, s. */
    static final double CLEAR_S = 3;

    /**
     * One chance in six. Our choice: a look at the tip costs a driver a moment, a strike breaks a boom. At half, which would be no standard
     * deviation, a wing on its way down a terrace is told up to a quarter of a second later.
     */
    private static final double DEVIATIONS = 1;

    /** One chance in forty. Our choice. */
    private static final double CLEAR_DEVIATIONS = 2;

    private final String wing;
    private final double limitS;
    private final double clearanceM;
    private final Units units;

    StrikeWatch(String wing, Rig rig) {
        this.wing = wing;
        this.limitS = rig.limits().strikeS();
        this.clearanceM = rig.limits().clearanceM();
        this.units = rig.units();
    }

    Verdict verdict(Tip tip) {
        if (!tip.isKnown()) {
            return Verdict.UNKNOWN;
        }
        double aboveM = tip.aheadM() - clearanceM;
        Verdict verdict = Verdict.below(aboveM, DEVIATIONS * tip.aheadSdM(), CLEAR_DEVIATIONS * tip.aheadSdM());
        return verdict == Verdict.OVER && !tip.isSure() ? Verdict.LEANING : verdict;
    }

    Watch.Finding finding(Tip tip) {
        String why = "The " + wing + " tip is at " + units.length(tip.heightM()) + " and will be at about "
                + units.length(Math.max(0, tip.aheadM())) + " in " + text(tip.inS(), 1) + " s.";
        return new Watch.Finding(tip.inS(), limitS, "s", why, "Raise the " + wing + " wing now, and slow down.");
    }
}
