package evenfall.judge;

/**
 * The state of one alert at one place: raised when the limit has been passed for long enough in time and in metres, cleared when
 * things have been well for as long. What lies between does neither, so an alert does not chatter on its limit.
 *
 * <p>What cannot be judged does not raise, and clears like what is well: nothing old is shown as now.
 *
 * <p>No alert rises three times in a minute. One that has risen twice stands until its next rise would come a minute after its first
 * (an off-delay, as IEC 62682 and ISA-18.2 name it, from memory); where it cannot be judged it clears all the same, and waits with
 * rising.
 */
final class Latch {
    enum Change {
        NONE,
        RAISED,
        CLEARED
    }

    /** Two rises in so long, and no third. Our choice: whoever was told twice in a minute knows. */
    private static final long CALM_US = 60_000_000;

    private final double holdS;
    private final double holdM;
    private final double clearS;
    private final double clearM;
    private long runSinceUs = -1;
    private double runS;
    private double runM;
    private boolean paused;
    private boolean standing;
    private long sinceUs = -1;
    private long raisedUs = Long.MIN_VALUE / 2;
    private long raisedBeforeUs = Long.MIN_VALUE / 2;

    /**
     * @param holdS how long a change must last, s
     * @param holdM and over how much ground, m
     */
    Latch(double holdS, double holdM) {
        this(holdS, holdM, holdS, holdM);
    }

    /**
     * @param holdS how long the limit must be passed before it rises, s
     * @param holdM and over how much ground, m
     * @param clearS how long all must be well before it clears, s
     * @param clearM and over how much ground, m
     */
    Latch(double holdS, double holdM, double clearS, double clearM) {
        this.holdS = holdS;
        this.holdM = holdM;
        this.clearS = clearS;
        this.clearM = clearM;
    }

    boolean isStanding() {
        return standing;
    }

    /** When the limit was first passed, for the alert that was raised last, µs; -1 before the first. */
    long sinceUs() {
        return sinceUs;
    }

    /**
     * Takes one look.
     *
     * @param nowUs event time, µs
     * @param stepS time since the look before, s
     * @param stepM ground since the look before, m
     */
    Change look(long nowUs, double stepS, double stepM, Verdict verdict) {
        boolean forChange = standing
                ? verdict == Verdict.WELL || verdict == Verdict.UNKNOWN
                : verdict == Verdict.OVER || verdict == Verdict.LEANING;
        boolean against = standing ? verdict == Verdict.OVER : verdict == Verdict.WELL || verdict == Verdict.UNKNOWN;
        if (against) {
            runSinceUs = -1;
            return Change.NONE;
        }
        if (!forChange) {
            paused = true;
            return Change.NONE;
        }
        // What only seems to be past the limit begins anew once it did not even seem so.
        boolean anew = paused && verdict == Verdict.LEANING;
        paused = false;
        if (runSinceUs < 0 || anew) {
            runSinceUs = nowUs;
            runS = 0;
            runM = 0;
        } else {
            runS += stepS;
            runM += stepM;
        }
        // What is not known moves no metres; a standing alert must still be able to clear then.
        boolean farEnough = runM >= (standing ? clearM : holdM) || (standing && verdict == Verdict.UNKNOWN);
        boolean longEnough = runS + 1e-9 >= (standing ? clearS : holdS);
        if (!longEnough || !farEnough || verdict == Verdict.LEANING) {
            return Change.NONE;
        }
        if (wouldChatter(nowUs, verdict)) {
            return Change.NONE;
        }
        standing = !standing;
        if (standing) {
            sinceUs = runSinceUs;
            raisedBeforeUs = raisedUs;
            raisedUs = nowUs;
        }
        runSinceUs = -1;
        return standing ? Change.RAISED : Change.CLEARED;
    }

    private boolean wouldChatter(long nowUs, Verdict verdict) {
        if (standing) {
            long riseUs = nowUs + Math.round(holdS * 1e6);
            return verdict != Verdict.UNKNOWN && riseUs - raisedBeforeUs < CALM_US;
        }
        return nowUs - raisedBeforeUs < CALM_US;
    }
}
