package evenfall.bench.choose;

import evenfall.liquid.Orifice;
import evenfall.outlet.OutletDesign;
import evenfall.outlet.OutletType;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One outlet type against the job.
 *
 * @param type as fitted
 * @param bar whether it is a bar
 * @param sizesInOne metering sizes that one outlet carries
 * @param windowPa pressures that both the machine and the outlet can work at, Pa; null where there are none
 * @param reaches metering sizes that reach some of the range, rising
 * @param reachedShare share of the range that all sizes together reach, 0 to 1
 * @param cover the fewest sizes that reach all of it; null where they leave a gap
 * @param shortfall why there is no cover; null where there is
 * @param corners low rate at low and high speed, then high rate at low and high speed
 * @param evenness what height does to the rows; null where there is no pressure window
 * @param contact null where there is no cover
 * @param cost of all sets
 */
public record Candidate(
        OutletType type,
        boolean bar,
        int sizesInOne,
        @Nullable Span windowPa,
        List<Reach> reaches,
        double reachedShare,
        @Nullable Cover cover,
        @Nullable Shortfall shortfall,
        List<Corner> corners,
        @Nullable Evenness evenness,
        @Nullable LeafContact contact,
        Cost cost) {

    /** Why the range is not reached. */
    public enum Shortfall {
        /** The machine's pressures and the outlet's do not meet. */
        NO_PRESSURE,
        /** Even the smallest size lets too much through. */
        TOO_LITTLE_ASKED,
        /** Even the largest size lets too little through. */
        TOO_MUCH_ASKED,
        /** The pressure window is so narrow that neighbouring sizes leave flows between them. */
        GAPS
    }

    public Candidate {
        reaches = List.copyOf(reaches);
        corners = List.copyOf(corners);
    }

    static Candidate of(Job job, OutletDesign design, Prices prices) {
        OutletType type = design.fitted(job.spacingM());
        Span window = window(job, type);
        if (window == null) {
            return new Candidate(
                    type,
                    design.isBar(),
                    design.meteringSizes(),
                    null,
                    List.of(),
                    0,
                    null,
                    Shortfall.NO_PRESSURE,
                    corners(job, type, null),
                    null,
                    null,
                    Cost.unknown("it does not reach the range"));
        }
        List<Reach> all = reaches(job, type, window);
        Cover cover = cover(job, design, type, all);
        return new Candidate(
                type,
                design.isBar(),
                design.meteringSizes(),
                window,
                all.stream().filter(reach -> reach.share() > 0).toList(),
                cover != null ? 1 : shareOfUnion(job, all),
                cover,
                cover != null ? null : shortfall(job, all),
                corners(job, type, cover),
                Evenness.of(job, type, cover == null ? window : cover.pressuresPa()),
                cover == null ? null : contact(job, type, cover),
                cover == null
                        ? Cost.unknown("it does not reach the range")
                        : prices.cost(type.id(), job.outlets(), cover.sets()));
    }

    /** The fewest sizes alone, without all the rest; null where they leave a gap. */
    static @Nullable Cover cover(Job job, OutletDesign design) {
        OutletType type = design.fitted(job.spacingM());
        Span window = window(job, type);
        return window == null ? null : cover(job, design, type, reaches(job, type, window));
    }

    private static @Nullable Cover cover(Job job, OutletDesign design, OutletType type, List<Reach> reaches) {
        return Cover.fewest(job, type, design.meteringSizes(), reaches);
    }

    private static @Nullable Span window(Job job, OutletType type) {
        Span own = new Span(type.lowPa(), type.highPa());
        Span asked = job.pressuresPa() == null ? own : job.pressuresPa();
        return own.meets(asked) ? own.common(asked) : null;
    }

    private static List<Reach> reaches(Job job, OutletType type, Span windowPa) {
        List<Reach> reaches = new ArrayList<>();
        for (double sizeM3ps : MeteringSeries.flowsM3ps()) {
            Orifice orifice = Orifice.ratedAt(sizeM3ps, type.ratedPressurePa());
            Span flows = new Span(
                    orifice.flowM3ps(windowPa.low(), job.specificGravity()),
                    orifice.flowM3ps(windowPa.high(), job.specificGravity()));
            reaches.add(new Reach(sizeM3ps, flows, job.shareWithin(flows)));
        }
        return reaches;
    }

    private static double shareOfUnion(Job job, List<Reach> reaches) {
        double sum = 0;
        Span open = reaches.get(0).flowsM3ps();
        for (Reach reach : reaches) {
            if (reach.flowsM3ps().low() <= open.high()) {
                open = new Span(open.low(), reach.flowsM3ps().high());
            } else {
                sum += job.shareWithin(open);
                open = reach.flowsM3ps();
            }
        }
        return Math.min(1, sum + job.shareWithin(open));
    }

    private static Shortfall shortfall(Job job, List<Reach> reaches) {
        Span asked = job.outletFlowsM3ps();
        if (asked.low() < reaches.get(0).flowsM3ps().low()) {
            return Shortfall.TOO_LITTLE_ASKED;
        }
        return asked.high() > reaches.get(reaches.size() - 1).flowsM3ps().high()
                ? Shortfall.TOO_MUCH_ASKED
                : Shortfall.GAPS;
    }

    private static List<Corner> corners(Job job, OutletType type, @Nullable Cover cover) {
        List<Corner> corners = new ArrayList<>();
        for (double rateM : new double[] {job.ratesM().low(), job.ratesM().high()}) {
            for (double speedMps :
                    new double[] {job.speedsMps().low(), job.speedsMps().high()}) {
                double flowM3ps = job.outletFlowM3ps(rateM, speedMps);
                Cover.Step step = cover == null ? null : cover.stepFor(flowM3ps);
                corners.add(new Corner(
                        rateM,
                        speedMps,
                        flowM3ps,
                        flowM3ps * job.outlets(),
                        step,
                        step == null ? null : pressurePa(job, type, step, flowM3ps)));
            }
        }
        return corners;
    }

    private static LeafContact contact(Job job, OutletType type, Cover cover) {
        double flowM3ps = job.outletFlowsM3ps().middle();
        Cover.Step step = cover.stepFor(flowM3ps);
        return LeafContact.of(job, type, step.sizeM3ps(), pressurePa(job, type, step, flowM3ps));
    }

    private static double pressurePa(Job job, OutletType type, Cover.Step step, double flowM3ps) {
        return Orifice.ratedAt(step.sizeM3ps(), type.ratedPressurePa()).pressurePa(flowM3ps, job.specificGravity());
    }
}
