package evenfall.bench.score;

import evenfall.pattern.LineMeasures;
import evenfall.pattern.StaticPattern;
import evenfall.rig.BoomLayout;
import evenfall.sim.scenario.FittedSpec;

/**
 * How the lines of the outlets that are fitted lie on a level boom at the target height and the type's rated pressure: what is meant,
 * and what lines are held against.
 *
 * @param doubledShare share of the liquid in doubled lines, a ratio
 * @param widestGapM widest gap between neighbouring lines, m
 */
record LinesAtTarget(double doubledShare, double widestGapM) {
    static LinesAtTarget of(FittedSpec fitted, double targetHeightM) {
        BoomLayout boom = fitted.boom();
        LineMeasures lines = StaticPattern.of(
                        fitted.outlet(),
                        new StaticPattern.Layout(boom.outlets(), boom.spacingM(), boom.rowM(), boom.rowPhase()),
                        targetHeightM,
                        fitted.outlet().ratedPressurePa(),
                        fitted.specificGravity())
                .lineMeasures();
        // A boom that is narrower than its streams reach has no interior: nothing is doubled, and a gap is an outlet's
        // spacing.
        return lines == null
                ? new LinesAtTarget(0, boom.spacingM())
                : new LinesAtTarget(lines.doubledShare(), lines.widestGapM());
    }
}
