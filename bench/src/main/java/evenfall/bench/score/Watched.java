package evenfall.bench.score;

import evenfall.outlet.OutletType;
import evenfall.rig.Rig;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * One thing that can be past its limit in truth, and how the truth stands to it; the definitions are in {@link ScoringRules}.
 *
 * @param kinds the contract's words, of which one is due; the first is told where the truth names none
 * @param place where
 * @param holdS how long it must be past its limit, s
 * @param holdM and how far the machine must go meanwhile, m
 * @param excess how far the truth is past the limit at a moment, as a part of the limit: above 0 is past it, {@code -0.2} to 0 is
 *     near; null where the truth is not defined
 */
record Watched(
        List<String> kinds, String place, double holdS, double holdM, Function<TruthMoment, @Nullable Double> excess) {
    static final String GAPPED = "bands-gapped";
    static final String DOUBLED = "bands-doubled";

    /** A window may end at the target height itself; its way must not be nothing then. */
    private static final double LEAST_WAY_M = 0.01;

    /**
     * Everything that the truth itself can be due for, but for tips that strike.
     *
     * @param outlets those that are fitted: their pressure window counts
     */
    static List<Watched> all(Rig.Limits limits, OutletType outlets) {
        List<Watched> all = new ArrayList<>();
        all.add(held("rate-high", "boom", limits, m -> rate(m, 1, limits)));
        all.add(held("rate-low", "boom", limits, m -> rate(m, -1, limits)));
        all.add(held("wing-low", "left", limits, m -> low(m, m.leftWingM())));
        all.add(held("wing-high", "left", limits, m -> high(m, m.leftWingM())));
        all.add(held("wing-low", "right", limits, m -> low(m, m.rightWingM())));
        all.add(held("wing-high", "right", limits, m -> high(m, m.rightWingM())));
        all.add(new Watched(List.of(GAPPED, DOUBLED), "boom", limits.holdS(), limits.holdM(), m -> bands(m, limits)));
        all.add(held("pressure-outside", "boom", limits, m -> pressure(m, limits, outlets)));
        all.add(new Watched(List.of("travel-without-flow"), "boom", ScoringRules.NO_FLOW_S, 0, m -> noFlow(m, limits)));
        all.add(new Watched(List.of("flow-without-travel"), "boom", ScoringRules.RUNS_ON_S, 0, m -> runsOn(m, limits)));
        return all;
    }

    private static Watched held(
            String kind, String place, Rig.Limits limits, Function<TruthMoment, @Nullable Double> excess) {
        return new Watched(List.of(kind), place, limits.holdS(), limits.holdM(), excess);
    }

    boolean isOver(TruthMoment moment) {
        Double by = excess.apply(moment);
        return by != null && by > 0;
    }

    boolean isNear(TruthMoment moment) {
        Double by = excess.apply(moment);
        return by != null && by > -ScoringRules.NEAR_PART;
    }

    boolean isFor(String kind, String at) {
        return kinds.contains(kind) && place.equals(at);
    }

    /** Whether the truth tells which of several kinds is the right one. */
    boolean hasCauses() {
        return kinds.size() > 1;
    }

    /** Those of the kinds that the truth names at a moment. */
    Set<String> causes(TruthMoment moment) {
        TruthMoment.Stretch stretch = moment.unexplained();
        if (stretch.isDoubled()) {
            return stretch.isGapped() ? Set.of(GAPPED, DOUBLED) : Set.of(DOUBLED);
        }
        return stretch.isGapped() ? Set.of(GAPPED) : Set.of();
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

    private static @Nullable Double bands(TruthMoment moment, Rig.Limits limits) {
        Double rowCv = moment.unexplained().rowCv();
        return rowCv == null ? null : rowCv / limits.rowCv() - 1;
    }

    private static @Nullable Double pressure(TruthMoment moment, Rig.Limits limits, OutletType outlets) {
        TruthMoment.Flows flows = moment.flows();
        if (moment.speedMps() < limits.walkingMps() || !(flows.widthOnM() > 0)) {
            return null;
        }
        double pressurePa = flows.feedPressurePa();
        return Math.max(1 - pressurePa / outlets.lowPa(), pressurePa / outlets.highPa() - 1);
    }

    private static @Nullable Double noFlow(TruthMoment moment, Rig.Limits limits) {
        TruthMoment.Flows flows = moment.flows();
        if (moment.speedMps() < limits.walkingMps() || !(flows.wantedM3ps() > 0)) {
            return null;
        }
        return 1 - flows.outletsM3ps() / (ScoringRules.NO_FLOW_PART * flows.wantedM3ps());
    }

    private static @Nullable Double runsOn(TruthMoment moment, Rig.Limits limits) {
        TruthMoment.Flows flows = moment.flows();
        if (moment.speedMps() >= limits.walkingMps() && flows.widthOnM() > 0) {
            return null;
        }
        return flows.leavesM3ps() / (ScoringRules.RUNS_ON_PART * flows.machineM3ps()) - 1;
    }
}
