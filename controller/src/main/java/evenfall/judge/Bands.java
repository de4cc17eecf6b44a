package evenfall.judge;

import evenfall.outlet.OutletType;
import evenfall.pattern.BoomPattern;
import evenfall.pattern.LineMeasures;
import evenfall.pattern.RowMeasures;
import evenfall.pattern.StaticPattern;
import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * What the rows get wherever no wing's height explains it already, and which cause their lines show. Looked at once a moment and
 * shared by the two watches of bands.
 *
 * <p>Overlapping outlets double their lines on purpose. So the lines are held against those of the same outlets at the target
 * height and their rated pressure: where a greater part of the liquid falls on a neighbour's lines than there, the bands are
 * doubled; else the lines have bunched and left gaps. Lines that land nearer to their own outlets than there do not run into anybody: where
 * the outermost of two outlets meet half-way all the same, they are the weak ends of a pattern that is too narrow, as at low pressure.
 *
 * <p>One moment does not tell. Until the rows have been uneven for the rig's hold either alert waits for its rise; then the cause is named
 * once the last {@value #NAMING_LOOKS} moments agree, or by most of them when they have not agreed for a second more. Another cause is
 * named only when it has held in most of the last {@value #MEMORY_LOOKS}.
 */
final class Bands {
    /** Clears at eight tenths of the limit. Our choice. */
    private static final double WELL_PART = 0.8;

    /** So much more of the liquid on a neighbour's lines than at the target is doubling, a ratio. Our choice: one outlet in ten. */
    private static final double MORE = 0.1;

    /** A second. Our choice: a boom that leaves its height passes from gaps to doubling within the hold, and what comes to stay counts. */
    private static final int NAMING_LOOKS = 5;

    /** Longer than that nobody waits for them to agree, s. Our choice. */
    private static final double UNDECIDED_S = 1;

    /** Ten seconds, so that what is named does not flutter. Our choice. */
    private static final int MEMORY_LOOKS = 50;

    private final double limitCv;
    private final double holdS;
    private final double holdM;
    private final double halfWidthM;
    private final double hingeM;
    private final double doubledAtTarget;
    private final double reachAtTargetM;
    private final WingWatch[] left;
    private final WingWatch[] right;
    private long atUs = -1;
    private double fromM;
    private double toM;
    private @Nullable RowMeasures rows;
    private @Nullable LineMeasures lines;
    private Verdict uneven = Verdict.UNKNOWN;
    private int looks;
    private double heldS;
    private double heldM;
    private double undecidedS;

    /** Of the uneven moments since, the latest in the lowest bit: whether lines were doubled. */
    private long doubledThen;

    private boolean named;
    private boolean doubled;

    Bands(Rig rig) {
        BoomLayout boom = rig.boom();
        halfWidthM = 0.5 * boom.widthM();
        hingeM = boom.hingeM();
        StaticPattern atTarget = StaticPattern.of(
                rig.outlet(),
                new StaticPattern.Layout(boom.outlets(), boom.spacingM(), boom.rowM(), boom.rowPhase()),
                rig.target().heightM(),
                rig.outlet().ratedPressurePa(),
                rig.liquid().specificGravity());
        LineMeasures wanted = atTarget.lineMeasures();
        doubledAtTarget = wanted == null ? 0 : wanted.doubledShare();
        reachAtTargetM = reachAtTargetM(rig);
        limitCv = rig.limits().rowCv();
        holdS = rig.limits().holdS();
        holdM = rig.limits().holdM();
        left = new WingWatch[] {new WingWatch(true, true, rig), new WingWatch(true, false, rig)};
        right = new WingWatch[] {new WingWatch(false, true, rig), new WingWatch(false, false, rig)};
    }

    void look(Situation now) {
        if (now.nowUs() == atUs) {
            return;
        }
        atUs = now.nowUs();
        fromM = explained(left, now) ? -hingeM : -halfWidthM;
        toM = explained(right, now) ? hingeM : halfWidthM;
        BoomPattern pattern = now.pattern();
        rows = pattern == null ? null : pattern.rowMeasures(fromM, toM);
        lines = pattern == null ? null : pattern.lineMeasures(fromM, toM);
        uneven = rows == null ? Verdict.UNKNOWN : Verdict.above(rows.rowCv(), limitCv, WELL_PART * limitCv);
        if (uneven == Verdict.OVER && pattern != null) {
            take(now, isDoubled(pattern));
        } else if (uneven != Verdict.BETWEEN) {
            looks = 0;
            named = false;
        }
    }

    private void take(Situation now, boolean isDoubled) {
        heldS = looks == 0 ? 0 : heldS + now.stepS();
        heldM = looks == 0 ? 0 : heldM + now.stepM();
        looks++;
        doubledThen = doubledThen << 1 | (isDoubled ? 1 : 0);
        if (named) {
            int most = looks < MEMORY_LOOKS ? 0 : Long.bitCount(doubledThen & (1L << MEMORY_LOOKS) - 1);
            boolean other = doubled ? 2 * most < MEMORY_LOOKS : 2 * most > MEMORY_LOOKS;
            doubled ^= looks >= MEMORY_LOOKS && other;
        } else {
            int of = Math.min(looks, NAMING_LOOKS);
            int many = Long.bitCount(doubledThen & (1L << of) - 1);
            doubled = 2 * many > of;
            boolean agree = many == 0 || many == of;
            undecidedS = isHeld() ? undecidedS + now.stepS() : 0;
            named = isHeld() && (agree || undecidedS > UNDECIDED_S);
        }
    }

    private boolean isDoubled(BoomPattern pattern) {
        return lines != null
                && lines.doubledShare() - doubledAtTarget > MORE
                && pattern.reachM(fromM, toM) > reachAtTargetM;
    }

    private static double reachAtTargetM(Rig rig) {
        BoomLayout boom = rig.boom();
        OutletType outlet = rig.outlet();
        double specificGravity = rig.liquid().specificGravity();
        BoomPattern pattern = new BoomPattern(boom, outlet, rig.target().heightM(), specificGravity);
        double[] heightM = new double[boom.outlets()];
        boolean[] all = new boolean[boom.outlets()];
        Arrays.fill(heightM, rig.target().heightM());
        Arrays.fill(all, true);
        pattern.compute(heightM, all, all, outlet.speedFactor(outlet.ratedPressurePa(), specificGravity));
        return pattern.reachM(-0.5 * boom.widthM(), 0.5 * boom.widthM());
    }

    private static boolean explained(WingWatch[] wing, Situation now) {
        return wing[0].verdict(now) == Verdict.OVER || wing[1].verdict(now) == Verdict.OVER;
    }

    /** What the rows get; null where that is not known. */
    @Nullable
    RowMeasures rows() {
        return rows;
    }

    /** How the lines lie; null where fewer than two do. */
    @Nullable
    LineMeasures lines() {
        return lines;
    }

    /** How uneven they are. */
    Verdict uneven() {
        return uneven;
    }

    /** Whether they have been uneven for the rig's hold. */
    boolean isHeld() {
        return heldS + 1e-9 >= holdS && heldM >= holdM;
    }

    /** Whether the cause is named: lines that run into their neighbours', or else that have bunched. */
    boolean isNamed() {
        return named;
    }

    /** Whether this one of the two is the cause. */
    boolean is(boolean doubledOnes) {
        return doubled == doubledOnes;
    }

    /**
     * The part of the boom whose rows differ most: {@code left}, {@code centre} or {@code right}; of those that count, the worst.
     */
    String worstPart(BoomPattern pattern) {
        String worst = "centre";
        double most = cv(pattern, -hingeM, hingeM);
        if (fromM < -hingeM && cv(pattern, fromM, -hingeM) > most) {
            worst = "left";
            most = cv(pattern, fromM, -hingeM);
        }
        return toM > hingeM && cv(pattern, hingeM, toM) > most ? "right" : worst;
    }

    private static double cv(BoomPattern pattern, double fromM, double toM) {
        RowMeasures part = pattern.rowMeasures(fromM, toM);
        return part == null ? 0 : part.rowCv();
    }
}
