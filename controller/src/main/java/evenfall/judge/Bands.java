package evenfall.judge;

import evenfall.pattern.BoomPattern;
import evenfall.pattern.LineMeasures;
import evenfall.pattern.RowMeasures;
import evenfall.pattern.StaticPattern;
import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import org.jspecify.annotations.Nullable;

/**
 * What the rows get wherever no wing's height explains it already, and which cause their lines show. Looked at once a moment and
 * shared by the two watches of bands.
 *
 * <p>Overlapping outlets double their lines on purpose. So the lines are held against those of the same outlets at the target
 * height and their rated pressure: where a greater part of the liquid falls on a neighbour's lines than there, the bands are
 * doubled; else the lines have bunched and left gaps.
 */
final class Bands {
    /** So much more of the liquid on a neighbour's lines than at the target is doubling, a ratio. Our choice: one outlet in ten. */
    private static final double MORE = 0.1;

    /** The cause changes back only here, so that it does not flutter. Our choice: half of {@link #MORE}. */
    private static final double LESS = 0.5 * MORE;

    private final double halfWidthM;
    private final double hingeM;
    private final double doubledAtTarget;
    private final WingWatch[] left;
    private final WingWatch[] right;
    private long atUs = -1;
    private double fromM;
    private double toM;
    private @Nullable RowMeasures rows;
    private @Nullable LineMeasures lines;
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
        if (lines != null) {
            doubled = lines.doubledShare() - doubledAtTarget > (doubled ? LESS : MORE);
        }
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

    /** Whether the lines run into their neighbours'; else they have bunched. */
    boolean doubled() {
        return doubled;
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
