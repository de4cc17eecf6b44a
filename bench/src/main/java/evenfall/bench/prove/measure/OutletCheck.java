package evenfall.bench.prove.measure;

import java.util.ArrayList;
import java.util.List;

/**
 * What each outlet of a boom gives in the same time.
 *
 * @param nominalM3ps flow that each should give, m³/s
 * @param outlets from the left
 * @param mean of the boom, m³/s
 * @param cv standard deviation over the mean, with n − 1
 */
public record OutletCheck(double nominalM3ps, List<Outlet> outlets, Estimate mean, double cv) {
    /** Below this share of the nominal flow something sits in the outlet; a choice of ours. */
    static final double BLOCKED = 0.5;

    /** Words for an outlet. */
    public enum State {
        FINE("fine"),
        LOW("low, partly blocked"),
        BLOCKED("blocked"),
        WORN("worn, or the wrong size"),
        APART("off the boom's mean");

        private final String words;

        State(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * @param number from the left, from 1
     * @param flow m³/s
     * @param ofNominal flow over nominal, less 1
     * @param ofMean flow over the boom's mean, less 1
     * @param state by the limits
     * @param doubtful whether its uncertainty reaches over the nearest limit, so that another catch could say otherwise
     */
    public record Outlet(int number, Estimate flow, double ofNominal, double ofMean, State state, boolean doubtful) {}

    public OutletCheck {
        outlets = List.copyOf(outlets);
    }

    /**
     * @param flowsM3ps one for each outlet from the left, 0 or more
     * @param repeats catches of one and the same outlet, m³/s, at least two: what a catch by hand scatters
     * @param volumeHalfWidthShare how far off the jug or scale may be, the same way each time, over a usual catch
     * @param timeHalfWidthShare how far off the time may be, over the time
     * @param roundingM3ps what one reading's rounding alone scatters a flow by: repeats cannot show less, m³/s
     * @param nominalLimit largest difference from nominal, a ratio
     * @param meanLimit largest difference from the boom's mean, a ratio
     */
    public static OutletCheck of(
            double[] flowsM3ps,
            double[] repeats,
            double volumeHalfWidthShare,
            double timeHalfWidthShare,
            double roundingM3ps,
            double nominalM3ps,
            double nominalLimit,
            double meanLimit) {
        Spread boom = Spread.of(flowsM3ps);
        int dof = Spread.of(repeats).dof();
        double catchSd = Math.max(Spread.of(repeats).sd(), roundingM3ps);
        List<Outlet> outlets = new ArrayList<>();
        for (int i = 0; i < flowsM3ps.length; i++) {
            Estimate flow = estimate(flowsM3ps[i], catchSd, dof, boom.mean(), volumeHalfWidthShare, timeHalfWidthShare);
            double ofNominal = flow.value() / nominalM3ps - 1;
            double ofMean = flow.value() / boom.mean() - 1;
            double reach = flow.expanded() / nominalM3ps;
            double margin =
                    Math.min(Math.abs(Math.abs(ofNominal) - nominalLimit), Math.abs(Math.abs(ofMean) - meanLimit));
            State state = state(ofNominal, ofMean, nominalLimit, meanLimit);
            outlets.add(new Outlet(i + 1, flow, ofNominal, ofMean, state, state != State.BLOCKED && margin < reach));
        }
        Estimate mean = estimate(
                boom.mean(),
                catchSd / Math.sqrt(flowsM3ps.length),
                dof,
                boom.mean(),
                volumeHalfWidthShare,
                timeHalfWidthShare);
        return new OutletCheck(nominalM3ps, outlets, mean, boom.cv());
    }

    private static Estimate estimate(
            double value, double sd, int dof, double usual, double volumeHalfWidthShare, double timeHalfWidthShare) {
        return Estimate.of(
                value,
                Component.repeats("scatter of repeated catches", sd, dof),
                Component.within("scale or jug", usual * volumeHalfWidthShare),
                Component.within("time", value * timeHalfWidthShare));
    }

    private static State state(double ofNominal, double ofMean, double nominalLimit, double meanLimit) {
        if (1 + ofNominal < BLOCKED) {
            return State.BLOCKED;
        }
        if (ofNominal < -nominalLimit) {
            return State.LOW;
        }
        if (ofNominal > nominalLimit) {
            return State.WORN;
        }
        return Math.abs(ofMean) > meanLimit ? State.APART : State.FINE;
    }

    /** Greatest difference from nominal, a ratio without sign. */
    public double worstOfNominal() {
        double worst = 0;
        for (Outlet outlet : outlets) {
            worst = Math.max(worst, Math.abs(outlet.ofNominal()));
        }
        return worst;
    }

    /** Greatest difference from the boom's mean, a ratio without sign. */
    public double worstOfMean() {
        double worst = 0;
        for (Outlet outlet : outlets) {
            worst = Math.max(worst, Math.abs(outlet.ofMean()));
        }
        return worst;
    }

    /** Share of outlets that are not fine. */
    public double faultyShare() {
        long faulty = outlets.stream().filter(o -> o.state() != State.FINE).count();
        return (double) faulty / outlets.size();
    }
}
