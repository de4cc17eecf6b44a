package evenfall.judge;

import static evenfall.quantity.FixedDecimals.text;

import evenfall.quantity.Units;
import evenfall.rig.Rig;

/**
 * A tip on its way to ground or crop: its height over the speed at which that shrinks is the time that is left. Looked at as often as
 * heights come, since a boom falls from its set height within about a second.
 */
final class StrikeWatch {
    /** Two looks in a row: one could be noise. Our choice, s. */
    static final double RAISE_S = 0.05;

    /** A boom swings through in one to three seconds; until it has, it may come again. Our choice, s. */
    static final double CLEAR_S = 3;

    private final String wing;
    private final double limitS;
    private final Units units;

    StrikeWatch(String wing, Rig rig) {
        this.wing = wing;
        this.limitS = rig.limits().strikeS();
        this.units = rig.units();
    }

    Verdict verdict(Tip tip) {
        if (!tip.heightM().isKnown() || !tip.rateMps().isKnown()) {
            return Verdict.UNKNOWN;
        }
        double fallMps = -tip.rateMps().get();
        // Within twice its own scatter a rate may be noise, and noise strikes nothing.
        if (!(fallMps > 2 * tip.rateMps().sd())) {
            return Verdict.WELL;
        }
        return Verdict.below(leftS(tip), limitS, 2 * limitS);
    }

    private static double leftS(Tip tip) {
        return Math.max(0, tip.heightM().get()) / -tip.rateMps().get();
    }

    Watch.Finding finding(Tip tip) {
        double leftS = leftS(tip);
        String why = "The " + wing + " tip is at " + units.length(tip.heightM().get()) + " and comes down "
                + units.length(-tip.rateMps().get()) + " a second: it touches in " + text(leftS, 1) + " s.";
        return new Watch.Finding(leftS, limitS, "s", why, "Raise the " + wing + " wing now, and slow down.");
    }
}
