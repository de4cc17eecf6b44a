package evenfall.bench.choose;

import evenfall.liquid.Orifice;
import evenfall.outlet.OutletType;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The fewest metering sizes that together reach the whole range, and where one ends and the next begins.
 *
 * @param steps from the smallest size to the largest
 * @param changeovers between neighbouring steps, one fewer than there are steps
 * @param sets how many sets of outlets they make: one a size, or several sizes to a set where an outlet carries several
 */
public record Cover(List<Step> steps, List<Changeover> changeovers, int sets) {
    public Cover {
        steps = List.copyOf(steps);
        changeovers = List.copyOf(changeovers);
    }

    /**
     * One metering size at work.
     *
     * @param sizeM3ps flow with water at the rated pressure, m³/s
     * @param set which set it belongs to, from 1
     * @param usedM3ps flows of the product that it serves, m³/s
     * @param pressuresPa pressures that these take, Pa
     */
    public record Step(double sizeM3ps, int set, Span usedM3ps, Span pressuresPa) {}

    /**
     * From one size to the next.
     *
     * @param flowM3ps flow through one outlet at which to change: the middle of the overlap, m³/s
     * @param overlapM3ps flows that both sizes reach, m³/s
     * @param newSet whether other outlets must be fitted; otherwise those on the boom are turned or opened
     */
    public record Changeover(double flowM3ps, Span overlapM3ps, boolean newSet) {
        /** The rate at which to change at a speed, as a depth, m; null where that rate is not asked for. */
        public @Nullable Double rateM(Job job, double speedMps) {
            double rateM = flowM3ps / (speedMps * job.spacingM());
            return job.ratesM().contains(rateM) ? rateM : null;
        }

        /** The speed at which to change at a rate, m/s; null where that speed is not asked for. */
        public @Nullable Double speedMps(Job job, double rateM) {
            double speedMps = flowM3ps / (rateM * job.spacingM());
            return job.speedsMps().contains(speedMps) ? speedMps : null;
        }
    }

    /**
     * @param type the outlet; its own rated flow does not matter
     * @param sizesInOne metering sizes that one outlet carries
     * @param reaches what each size reaches, rising
     * @return null where the sizes leave a gap
     */
    static @Nullable Cover fewest(Job job, OutletType type, int sizesInOne, List<Reach> reaches) {
        List<Span> pieces = new ArrayList<>();
        for (Reach reach : reaches) {
            pieces.add(reach.flowsM3ps());
        }
        Span whole = job.outletFlowsM3ps();
        int[] chosen = IntervalCover.fewest(pieces, whole);
        if (chosen == null) {
            return null;
        }
        List<Changeover> changeovers = new ArrayList<>();
        for (int i = 1; i < chosen.length; i++) {
            double fromM3ps = pieces.get(chosen[i]).low();
            // Ends that meet but for rounding.
            double toM3ps = Math.max(fromM3ps, pieces.get(chosen[i - 1]).high());
            Span overlap = new Span(fromM3ps, toM3ps)
                    .common(new Span(Math.min(whole.low(), toM3ps), Math.max(whole.high(), fromM3ps)));
            changeovers.add(new Changeover(overlap.middle(), overlap, i % sizesInOne == 0));
        }
        List<Step> steps = new ArrayList<>();
        for (int i = 0; i < chosen.length; i++) {
            double sizeM3ps = reaches.get(chosen[i]).sizeM3ps();
            Span used = new Span(
                    i == 0 ? whole.low() : changeovers.get(i - 1).flowM3ps(),
                    i == chosen.length - 1 ? whole.high() : changeovers.get(i).flowM3ps());
            Orifice orifice = Orifice.ratedAt(sizeM3ps, type.ratedPressurePa());
            Span pressures = new Span(
                    orifice.pressurePa(used.low(), job.specificGravity()),
                    orifice.pressurePa(used.high(), job.specificGravity()));
            steps.add(new Step(sizeM3ps, 1 + i / sizesInOne, used, pressures));
        }
        return new Cover(steps, changeovers, steps.get(steps.size() - 1).set());
    }

    /** The step that serves a flow; the smaller one where two meet. The flow is one that the cover reaches. */
    public Step stepFor(double flowM3ps) {
        for (Step step : steps) {
            if (flowM3ps <= step.usedM3ps().high()) {
                return step;
            }
        }
        return steps.get(steps.size() - 1);
    }

    /** Pressures at work, over all steps, Pa. */
    public Span pressuresPa() {
        double low = Double.MAX_VALUE;
        double high = 0;
        for (Step step : steps) {
            low = Math.min(low, step.pressuresPa().low());
            high = Math.max(high, step.pressuresPa().high());
        }
        return new Span(low, high);
    }
}
