package evenfall.judge;

import static evenfall.quantity.FixedDecimals.text;

import evenfall.quantity.Units;
import evenfall.rig.Rig;

/**
 * A tip on its way to ground or crop: its height over the speed at which that shrinks is the time that is left. Looked at as often as
 * heights come, since a boom falls from its set height within about a second.
 *
 * <p>Most falls are swings that turn in time. A boom that swings about its set height {@code h0} with the angular frequency {@code ω} gets
 * down to {@code h0 − √((h − h0)² + (v/ω)²)} from a height {@code h} and a speed {@code v}, as any undamped oscillator does; only what
 * gets below the clearance is warned of.
 */
final class StrikeWatch {
    /** Three looks in a row: one or two could be a loose sensor. Our choice, s. */
    static final double RAISE_S = 0.1;

    /** A boom swings through in one to three seconds; until it has, it may come again. Our choice, s. */
    static final double CLEAR_S = 3;

    /**
     * Frequency of that swing, Hz: within what booms on their suspension have, 0.3 to 0.6 Hz (common practice, no source). A slower one
     * warns of more swings that turn in time, a faster one later: at 0.45 Hz two alerts in 100 clean hours had no cause.
     */
    private static final double SWING_HZ = 0.5;

    private final String wing;
    private final double limitS;
    private final double setM;
    private final double clearanceM;
    private final Units units;

    StrikeWatch(String wing, Rig rig) {
        this.wing = wing;
        this.limitS = rig.limits().strikeS();
        this.setM = rig.target().heightM();
        this.clearanceM = rig.limits().clearanceM();
        this.units = rig.units();
    }

    Verdict verdict(Tip tip) {
        if (!tip.isKnown()) {
            return Verdict.UNKNOWN;
        }
        double fallMps = -tip.rateMps();
        // Within its own scatter a rate is as likely noise as motion, and noise strikes nothing.
        if (!(fallMps > Math.sqrt(tip.rateVariance()))) {
            return Verdict.WELL;
        }
        if (lowestM(tip.heightM(), fallMps) >= clearanceM) {
            return Verdict.WELL;
        }
        return Verdict.below(leftS(tip), limitS, 2 * limitS);
    }

    /** How low the swing gets. */
    private double lowestM(double heightM, double fallMps) {
        double bySpeedM = fallMps / (2 * Math.PI * SWING_HZ);
        return setM - Math.sqrt((heightM - setM) * (heightM - setM) + bySpeedM * bySpeedM);
    }

    private static double leftS(Tip tip) {
        return Math.max(0, tip.heightM()) / -tip.rateMps();
    }

    Watch.Finding finding(Tip tip) {
        double leftS = leftS(tip);
        String why = "The " + wing + " tip is at " + units.length(tip.heightM()) + " and comes down "
                + units.length(-tip.rateMps()) + " a second: it touches in " + text(leftS, 1) + " s.";
        return new Watch.Finding(leftS, limitS, "s", why, "Raise the " + wing + " wing now, and slow down.");
    }
}
