package evenfall.bench.score;

import evenfall.rig.Rig;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * One kind of alert at one place, and how the truth stands to its limit; the definitions are in {@link ScoringRules}.
 *
 * @param kind the contract's word
 * @param place where
 * @param excess how far the truth is past the limit at a moment, as a part of the limit: above 0 is past it, {@code -0.2} to 0 is
 *     near; null where the truth is not defined
 */
record Watched(String kind, String place, Function<TruthMoment, @Nullable Double> excess) {

    /** A window may end at the target height itself; its way must not be nothing then. */
    private static final double LEAST_WAY_M = 0.01;

    /** Everything that a fault-free scenario can be due for. */
    static List<Watched> all(Rig.Limits limits) {
        return List.of(
                new Watched("rate-high", "boom", m -> rate(m, 1, limits)),
                new Watched("rate-low", "boom", m -> rate(m, -1, limits)),
                new Watched("wing-low", "left", m -> low(m, m.leftWingM())),
                new Watched("wing-high", "left", m -> high(m, m.leftWingM())),
                new Watched("wing-low", "right", m -> low(m, m.rightWingM())),
                new Watched("wing-high", "right", m -> high(m, m.rightWingM())),
                new Watched("bands-gapped", "boom", m -> bands(m, false, limits)),
                new Watched("bands-doubled", "boom", m -> bands(m, true, limits)));
    }

    boolean isOver(TruthMoment moment) {
        Double by = excess.apply(moment);
        return by != null && by > 0;
    }

    boolean isNear(TruthMoment moment) {
        Double by = excess.apply(moment);
        return by != null && by > -ScoringRules.NEAR_PART;
    }

    private static @Nullable Double rate(TruthMoment moment, int sign, Rig.Limits limits) {
        Double error = moment.rateError();
        return error == null ? null : sign * error / limits.rateError() - 1;
    }

    private static double low(TruthMoment moment, double heightM) {
        return (moment.lowestM() - heightM) / Math.max(LEAST_WAY_M, moment.targetHeightM() - moment.lowestM());
    }

    private static double high(TruthMoment moment, double heightM) {
        return (heightM - moment.highestM()) / Math.max(LEAST_WAY_M, moment.highestM() - moment.targetHeightM());
    }

    private static @Nullable Double bands(TruthMoment moment, boolean doubled, Rig.Limits limits) {
        TruthMoment.Stretch stretch = moment.unexplained();
        Double rowCv = stretch.rowCv();
        boolean above = stretch.heightM() > moment.targetHeightM();
        return rowCv == null || above != doubled ? null : rowCv / limits.rowCv() - 1;
    }
}
