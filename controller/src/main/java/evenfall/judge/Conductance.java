package evenfall.judge;

import evenfall.detect.Noise;
import evenfall.detect.ShiftTest;
import evenfall.outlet.OutletType;
import evenfall.rig.Rig;
import evenfall.sense.Quantity;

/**
 * The machine's conductance: measured flow over what the open outlets should let through at the measured pressure, {@code r = Q / (n K
 * √(p / SG))}. It learns its own machine's ratio in clean running, then looks for steps of its logarithm. Looked at once a moment and
 * shared by the watches of outlets.
 *
 * <p>A step counts when a sequential test has found it and it has then lasted: air and foam pass sooner. Flow and pressure are set
 * against each other only while the flow is steady, since the line gives way and the pressure follows the flow; and some time after a
 * switch of a section. What is too much to be explained by that, as a section that runs on, is told sooner ({@link AfterSwitch}). What each number rests on stands in {@code controller/docs/judgement.md}.
 */
final class Conductance {
    /** Stands for the whole boom where a section could stand. */
    static final int BOOM = -1;

    /** An indicator of flow may be off by this share (French order of 18 December 2008, NOR AGRP0828914A, 5.5.2). */
    private static final double FLOW_TOLERANCE = 0.05;

    /** A gauge may be off by this share above 2 bar (the same order, 5.4.2.2). */
    private static final double PRESSURE_TOLERANCE = 0.10;

    /** From 28 to 32 % UAN (1.276 to 1.325 kg/L, Univ. of Nebraska-Lincoln CropWatch 2016). */
    private static final double DENSITY_TOLERANCE = 0.04;

    /** Prior width of the logarithm of r: its three tolerances, by the root of their squares; pressure and density stand under a root. */
    static final double PRIOR_WIDTH = Math.sqrt(FLOW_TOLERANCE * FLOW_TOLERANCE
            + 0.25 * PRESSURE_TOLERANCE * PRESSURE_TOLERANCE
            + 0.25 * DENSITY_TOLERANCE * DENSITY_TOLERANCE);

    /** The ratio of a healthy machine wanders by so much at one pressure: meter and transmitter repeat to it, common practice, no source. */
    static final double REPEATABILITY = 0.005;

    /** More that it may differ with other sections on, since the line loses less (half of 3 % of pressure, common practice, no source). */
    private static final double LINE = 0.015;

    /** A transmitter's zero is wrong by this share of its span, common practice, no source. */
    private static final double ZERO_OF_SPAN = 0.0025;

    /** A meter's factor changes by this share for each e-fold of flow: 1 % over ten to one, half as much each way; common practice, no source. */
    private static final double LINEARITY = 0.005;

    /** A pressure reading scatters by a tenth of a percent of itself at the very least: by half of it the ratio. */
    private static final double LEAST_SCATTER = 0.001;

    /** Steps that the test is made for, as shares. Our choice, a factor of four or five apart: in between it loses little. */
    private static final double[] SIZES = {0.01, 0.04, 0.2};

    /** Stopped or settled within 5 s (the French order, 5.1.1.2 and 5.2.1.2). */
    private static final double SETTLED_S = 5;

    /** Steady: over a second the flow stays within this share. The pressure may then lag by 0.2 s and cost 0.3 %. */
    private static final double STEADY = 0.015;

    /** Flow is a mean over 0.3 s, half of that late; the pressure lags by as much as 0.2 s: at worst both add up. */
    private static final double LAG_S = 0.35;

    private static final int STEADY_LOOKS = 6;

    /** 5 s of steady running. */
    private static final int LEARN_LOOKS = 25;

    /** 2 s: longer than a slug of air passes, our choice. */
    private static final int LAST_LOOKS = 10;

    /** Ten looks of one level lie within 3.1 standard deviations of each other on average; not one set in a million exceeds this. */
    private static final double MOST_RANGE = 8;

    /** As many looks in a row lack, and none for as many: one look alone is noise. Our choice. */
    private static final int LACKING_LOOKS = 3;

    /** Three standard deviations. */
    private static final double SURE = 3;

    /** Not known for less than this, s, takes nothing back: a meter's first pulses after a standstill tell no flow yet. Our choice. */
    private static final double GONE_S = 1;

    /** Less than this part of what the pressure drives is no flow, or no pressure; other alerts speak of it. */
    private static final double NO_FLOW_PART = 0.1;

    private enum Stage {
        /** What this machine's ratio is, is not known yet. */
        LEARN,
        /** Learnt, and looking for a step. */
        WATCH,
        /** A step has been found: does it last? */
        LAST,
        /** After a switch or a gap: what is it now? */
        ANEW
    }

    private final OutletType outlet;
    private final double specificGravity;
    private final double sectionS;
    private final double zeroPa;
    private final double leastPa;
    private final Noise noise = new Noise(LEAST_SCATTER, 1);
    private final ShiftTest up = new ShiftTest(Looks.BETWEEN_FALSE_ALARMS, SIZES);
    private final ShiftTest down = new ShiftTest(Looks.BETWEEN_FALSE_ALARMS, SIZES);
    private final AfterSwitch afterSwitch = new AfterSwitch(SIZES);
    private final Steps steps = new Steps();
    private final Level healthy = new Level();
    private final Level current = new Level();
    private final Level fresh = new Level();
    private final double[] logFlow = new double[STEADY_LOOKS];

    private Stage stage = Stage.LEARN;
    private boolean learnt;
    private long healthyMask;
    private double healthyOpen;
    private long lookedUs = -1;
    private boolean known;
    private boolean compared;
    private double unknownS;
    private long mask;
    private long maskBefore;
    private double open;
    private double sinceSwitchS;
    private int steadyLooks;
    private boolean falling;
    private int lackingInRow;
    private boolean lacks;

    Conductance(Rig rig) {
        outlet = rig.outlet();
        specificGravity = rig.liquid().specificGravity();
        sectionS = rig.limits().sectionS();
        double spanPa =
                rig.sensors().pressure().map(p -> p.highPa() - p.lowPa()).orElse(0.0);
        zeroPa = ZERO_OF_SPAN * spanPa;
        // Where the zero alone makes more than the prior's width of the ratio nothing can be told.
        leastPa = 0.5 * zeroPa / PRIOR_WIDTH;
    }

    void look(Situation now) {
        if (now.nowUs() == lookedUs) {
            return;
        }
        lookedUs = now.nowUs();
        Situation.Plumbing seen = now.plumbing();
        boolean knownBefore = known;
        known = seen.flowM3ps().isKnown()
                && seen.pressurePa().isKnown()
                && seen.openOutlets().isKnown();
        if (!known) {
            steadyLooks = 0;
            forgetLack();
            unknownS += now.stepS();
            compared &= unknownS < GONE_S;
            return;
        }
        unknownS = 0;
        if (!knownBefore || seen.sectionMask() != mask) {
            mask = seen.sectionMask();
            open = seen.openOutlets().get();
            sinceSwitchS = 0;
            steadyLooks = 0;
            forgetLack();
            begin(learnt ? Stage.ANEW : Stage.LEARN);
        } else {
            sinceSwitchS += now.stepS();
        }
        if (open > 0) {
            compare(seen.flowM3ps(), seen.pressurePa().get());
        }
    }

    private void begin(Stage next) {
        stage = next;
        fresh.clear();
        up.reset();
        down.reset();
        afterSwitch.reset();
        if (next != Stage.LAST) {
            noise.gap();
        }
    }

    private void compare(Quantity flow, double pressurePa) {
        double drivenM3ps = open * outlet.orifice().flowM3ps(pressurePa, specificGravity);
        boolean flows = pressurePa > leastPa && flow.get() > NO_FLOW_PART * drivenM3ps;
        boolean steady = flows && isSteady(flow.get());
        double logRatio = StrictMath.log(flow.get() / drivenM3ps);
        if (learnt && flows && steadyLooks >= STEADY_LOOKS) {
            lookForLack(logRatio, pressurePa, flow.get());
        } else {
            forgetLack();
        }
        if (!steady || sinceSwitchS < SETTLED_S) {
            if (flows && stage == Stage.ANEW && sinceSwitchS >= sectionS) {
                runsOn(logRatio, pressurePa, flow.get());
            }
            steadyLooks = flows ? steadyLooks : 0;
            return;
        }
        noise.take(logRatio);
        switch (stage) {
            case LEARN -> learn(logRatio, pressurePa, flow.get());
            case WATCH -> watch(logRatio, pressurePa, flow.get());
            case LAST -> last(logRatio, pressurePa, flow.get());
            case ANEW -> anew(logRatio, pressurePa, flow.get());
        }
    }

    /** Does more flow than a section that was switched off, and all that is not settled yet, can explain? */
    private void runsOn(double logRatio, double pressurePa, double flowM3ps) {
        long off = maskBefore & ~mask;
        if (off == 0 || afterSwitch.hasTold() || steadyLooks < STEADY_LOOKS) {
            return;
        }
        double within = unsettled(pressurePa, flowM3ps);
        double seen = open * (StrictMath.exp(logRatio - healthy.logRatio()) - 1);
        double left = steps.unexplained(seen, within * open, mask);
        if (afterSwitch.take((left - within * open) / open, noise.effective())) {
            steps.add(steps.explain(seen, within * open, mask), within * open, off, true);
            compared = true;
        }
    }

    /** What one look may be off by before all has settled, in logarithms. */
    private double unsettled(double pressurePa, double flowM3ps) {
        return REPEATABILITY
                + otherSections()
                + SURE * noise.effective()
                + healthy.wander(pressurePa, flowM3ps, zeroPa, LINEARITY)
                + LAG_S * fastestPs();
    }

    /** Does less flow than all that is known, and all that is not settled yet, can explain? No alert yet, but nothing to rest rows on. */
    private void lookForLack(double logRatio, double pressurePa, double flowM3ps) {
        double within = unsettled(pressurePa, flowM3ps) * open;
        double seen = open * (StrictMath.exp(logRatio - healthy.logRatio()) - 1);
        boolean lacking = steps.unexplained(seen, within, mask) < -within;
        lackingInRow = lacking == lacks ? 0 : lackingInRow + 1;
        if (lackingInRow >= LACKING_LOOKS) {
            lacks = lacking;
            lackingInRow = 0;
        }
    }

    private void forgetLack() {
        lacks = false;
        lackingInRow = 0;
    }

    /** The fastest that the flow has changed of late, as a share of itself a second. */
    private double fastestPs() {
        double most = 0;
        for (int back = 1; back < STEADY_LOOKS; back++) {
            double newer = logFlow[(steadyLooks - back) % STEADY_LOOKS];
            double older = logFlow[(steadyLooks - back - 1) % STEADY_LOOKS];
            most = Math.max(most, Math.abs(newer - older));
        }
        return most * Looks.PER_S;
    }

    private boolean isSteady(double flowM3ps) {
        logFlow[steadyLooks % STEADY_LOOKS] = StrictMath.log(flowM3ps);
        steadyLooks = steadyLooks + 1 < 2 * STEADY_LOOKS ? steadyLooks + 1 : STEADY_LOOKS;
        if (steadyLooks < STEADY_LOOKS) {
            return false;
        }
        double least = logFlow[0];
        double most = logFlow[0];
        for (double each : logFlow) {
            least = Math.min(least, each);
            most = Math.max(most, each);
        }
        return most - least <= STEADY;
    }

    /** Collects one level; says when there are enough looks that lie together. */
    private boolean collect(double logRatio, double pressurePa, double flowM3ps, int looks) {
        fresh.take(logRatio, pressurePa, flowM3ps);
        if (fresh.looks() < looks) {
            return false;
        }
        if (fresh.range() > MOST_RANGE * noise.sigma()) {
            fresh.clear();
            return false;
        }
        return true;
    }

    private void learn(double logRatio, double pressurePa, double flowM3ps) {
        if (collect(logRatio, pressurePa, flowM3ps, LEARN_LOOKS)) {
            learnt = true;
            adopt();
            settleOn();
        }
    }

    /** What is fresh is what this machine is like. */
    private void adopt() {
        healthy.copy(fresh);
        healthyMask = mask;
        healthyOpen = open;
    }

    private void settleOn() {
        compared = true;
        current.copy(fresh);
        maskBefore = mask;
        fresh.clear();
        up.reset();
        down.reset();
        stage = Stage.WATCH;
    }

    private void watch(double logRatio, double pressurePa, double flowM3ps) {
        double sigma = noise.effective();
        double wander = REPEATABILITY + current.wander(pressurePa, flowM3ps, zeroPa, LINEARITY);
        double change = logRatio - current.logRatio();
        up.take(change - wander, sigma);
        down.take(-change - wander, sigma);
        if (up.isSure() || down.isSure()) {
            falling = down.isSure();
            begin(Stage.LAST);
            return;
        }
        // A look far off draws the level along no more than an ordinary one.
        double bound = 2 * noise.sigma();
        double tame = current.logRatio() + Math.max(-bound, Math.min(bound, change));
        current.take(tame, pressurePa, flowM3ps);
        if (steps.isEmpty() && mask == healthyMask) {
            healthy.copy(current);
        }
    }

    private void last(double logRatio, double pressurePa, double flowM3ps) {
        if (!collect(logRatio, pressurePa, flowM3ps, LAST_LOOKS)) {
            return;
        }
        double within = within(current, 0);
        if (Math.abs(fresh.logRatio() - current.logRatio()) <= within) {
            fresh.clear();
            up.reset();
            down.reset();
            stage = Stage.WATCH;
            return;
        }
        double change = outletsMore(fresh) - outletsMore(current);
        if (isHealthy()) {
            steps.clear();
        } else if (!steps.takeBack(change, within * open)) {
            steps.add(change, within * open, mask, false);
        }
        settleOn();
    }

    private void anew(double logRatio, double pressurePa, double flowM3ps) {
        if (!collect(logRatio, pressurePa, flowM3ps, LAST_LOOKS)) {
            return;
        }
        double within = within(healthy, otherSections()) * open;
        double left = steps.explain(outletsMore(fresh), within, mask);
        if (Math.abs(left) > within) {
            long on = mask & ~maskBefore;
            long off = maskBefore & ~mask;
            if (left > 0 && off != 0) {
                steps.add(left, within, off, true);
            } else {
                steps.add(left, within, left < 0 && on != 0 ? on : mask, false);
            }
        } else if (steps.isEmpty() && open > healthyOpen) {
            adopt();
        }
        settleOn();
    }

    private double otherSections() {
        return mask == healthyMask ? 0 : LINE;
    }

    private boolean isHealthy() {
        return Math.abs(fresh.logRatio() - healthy.logRatio()) <= within(healthy, otherSections());
    }

    /** How well the fresh level can be set against another, in logarithms. */
    private double within(Level other, double more) {
        return REPEATABILITY
                + more
                + other.wander(fresh, zeroPa, LINEARITY)
                + SURE * noise.effective() / Math.sqrt(LAST_LOOKS);
    }

    private double outletsMore(Level level) {
        return open * (StrictMath.exp(level.logRatio() - healthy.logRatio()) - 1);
    }

    /**
     * Whether less seems to flow than the open outlets should take. Sooner than the alert, and less sure: a step down that has been found and has
     * not lasted yet, or looks that lack more than anything that has not settled explains.
     */
    boolean mayLack() {
        return known && (lacks || (stage == Stage.LAST && falling));
    }

    /** Whether flow, pressure and switches are known now. */
    boolean isKnown() {
        return known;
    }

    /** Whether they have been compared since they last were not known for more than a moment. */
    boolean isCompared() {
        return compared;
    }

    /** Changes that stand. */
    Steps steps() {
        return steps;
    }

    /** Outlets in sections that are on. */
    double open() {
        return open;
    }

    /** What one good outlet of this machine lets through at a pressure, m³/s. */
    double outletM3ps(double pressurePa) {
        return StrictMath.exp(healthy.logRatio()) * outlet.orifice().flowM3ps(pressurePa, specificGravity);
    }

    /** The learnt ratio less one where it is farther off than the tolerances explain; 0 where it is not, or not learnt yet. */
    double off() {
        boolean far = learnt && Math.abs(healthy.logRatio()) > PRIOR_WIDTH;
        return far ? StrictMath.exp(healthy.logRatio()) - 1 : 0;
    }
}
