package evenfall.sim.plumbing;

import evenfall.outlet.OutletType;
import evenfall.rig.BoomLayout;
import evenfall.sim.chance.Chance;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Tank, pump, strainer, meter, regulating valve, boom line, sections and outlets, stepped together with the machine's rate
 * controller.
 *
 * <p>The valve is a changing orifice between the pump's pressure and the boom: {@code Q = V √(pump − p)}; the outlets are orifices
 * between the boom and the air; between them the lines give way a little, in proportion to the pressure. A step is linearly implicit
 * in the boom's pressure, each orifice with its conductance {@code K/√Δp} of the step's beginning: it settles where the flows are
 * equal, never overshoots, and the same flows go into the books, so that what leaves the tank is what leaves the outlets, what
 * leaks and what the lines then hold more, to rounding.
 *
 * <p>Sections that are simply open are one with the boom's line and cost nothing of their own; see {@link SectionLine} for the others.
 */
public final class Plumbing {
    /** Share of the lines' give that is in the main line, whatever sections are on; a choice of ours. */
    private static final double MAIN_SHARE = 0.1;

    /** A section's valve lets through this times what its outlets do: 1 % of the pressure is lost in it; a choice of ours. */
    private static final double SECTION_VALVE = 10;

    private static final double LEAST_PA = 1;

    private final PlumbingSpec spec;
    private final BoomLayout boom;
    private final double specificGravity;
    private final RateController controller;
    private final OutletSet outlets;
    private final BoomLine line;
    private final SectionLine[] sections;
    private final double valveK;
    private final double strainerK;
    private final double mainCompliance;
    private final PlumbingTrouble trouble = new Hands();
    private final double[] through;
    private final double[] strainer;
    private final double[] drainedM3;
    private final double[] earlierM3;
    private final double[] leakedM3;
    private final double[] leakedEarlierM3;
    private final int[] sectionOf;

    private long wantedMask;
    private long shutMask;
    private long openMask;
    private double widthOnM;
    private int apart;
    private boolean stale;
    private boolean hasEarlier;
    private boolean hasLeaked;
    private boolean begun;

    private double compliance;
    private double feedPa;
    private double root;
    private double rootIntegral;
    private double meteredM3ps;
    private double pumpShare = 1;
    private double plugged;
    private double leakK;
    private @Nullable AirSlugs slugs;
    private double airShare;
    private double tankM3;
    private double lineLeakM3;

    /**
     * A boom with everything on, settled at a speed.
     *
     * @param boom outlets and sections
     * @param type outlet as it is fitted
     * @param specificGravity of the product
     * @param targetRateM what the operator has set, m³/m²
     * @param speedMps speed that the machine has been driving at
     * @param chance for the outlets' tolerance
     */
    public Plumbing(
            PlumbingSpec spec,
            BoomLayout boom,
            OutletType type,
            double specificGravity,
            double targetRateM,
            double speedMps,
            Chance chance) {
        this.spec = spec;
        this.boom = boom;
        this.specificGravity = specificGravity;
        int n = boom.outlets();
        outlets = new OutletSet(
                type.orifice(), n, spec.outletSpread(), spec.lines().wear(), chance);
        line = new BoomLine(outlets.k(), specificGravity, spec.lineLoss());
        through = new double[n];
        drainedM3 = new double[n];
        earlierM3 = new double[n];
        leakedM3 = new double[n];
        leakedEarlierM3 = new double[n];
        sectionOf = new int[n];
        for (int i = 0; i < n; i++) {
            sectionOf[i] = boom.sectionOf(i);
        }
        strainer = new double[boom.sections().size()];
        Arrays.fill(strainer, 1);
        Arrays.fill(through, 1);
        line.solve(outlets.k(), through);
        widthOnM = boom.widthM();
        // Fully open, the valve leaves four fifths of the pump's pressure to the boom.
        valveK = 2 * line.sum();
        strainerK = 2 * line.sum();
        double give = give();
        mainCompliance = MAIN_SHARE * give;
        compliance = mainCompliance;
        sections = new SectionLine[boom.sections().size()];
        for (int s = 0; s < sections.length; s++) {
            BoomLayout.Section section = boom.sections().get(s);
            double nominalK = 0;
            for (int i = section.firstOutlet(); i < section.endOutlet(); i++) {
                nominalK += outlets.k()[i] / Math.sqrt(specificGravity);
            }
            sections[s] = new SectionLine(
                    section.firstOutlet(),
                    section.endOutlet(),
                    (1 - MAIN_SHARE) * give * section.outletCount() / n,
                    spec.lines().dribbleM3() * section.outletCount(),
                    SECTION_VALVE * nominalK);
            compliance += sections[s].compliance();
        }
        wantedMask = (1L << sections.length) - 1;
        controller = new RateController(spec, targetRateM, speedMps);
        settle();
    }

    /** What all lines give way, m³ for each Pa, so that the boom's pressure lags by what the spec says at a third of the pump's. */
    private double give() {
        double middlePa = spec.pumpPa() / 3;
        double rootPa = Math.sqrt(middlePa);
        return spec.lineLagS() * line.sum() * (0.5 / rootPa + 0.5 * rootPa / (spec.pumpPa() - middlePa));
    }

    private void settle() {
        double wantedM3ps = controller.wantedM3ps(widthOnM, idleM3ps());
        double wantedPa = Math.min(wantedM3ps / line.sum() * (wantedM3ps / line.sum()), 0.75 * spec.pumpPa());
        controller.settle(line.sum() / valveK * Math.sqrt(wantedPa / (spec.pumpPa() - wantedPa)), wantedM3ps);
        // Pressure at which the valve lets through what the boom takes.
        double valve = controller.opening() * valveK;
        feedPa = spec.pumpPa() * valve * valve / (valve * valve + line.sum() * line.sum());
        root = Math.sqrt(feedPa);
        meteredM3ps = line.sum() * root;
        controller.settle(controller.opening(), meteredM3ps);
    }

    private double idleM3ps() {
        return line.sum() * Math.sqrt(spec.idlePa());
    }

    /**
     * Switches sections; their valves take their time, and what stands behind them drains.
     *
     * @param mask bit 0 is the leftmost section, 1 is on
     */
    public void switchSections(long mask) {
        wantedMask = mask;
        widthOnM = 0;
        for (int i = 0; i < through.length; i++) {
            widthOnM += isOn(i) ? boom.spacingM() : 0;
        }
        if (begun) {
            partSections();
        } else {
            startWithout();
        }
    }

    /** Sections that are off before the first step have long been off. */
    private void startWithout() {
        for (int s = 0; s < sections.length; s++) {
            if (sections[s].isJoined() && !opens(s)) {
                sections[s].leaveEmpty();
                compliance -= sections[s].compliance();
                apart++;
                stale = true;
            }
        }
        renew();
        if (widthOnM > 0) {
            settle();
        }
    }

    /** Takes the sections that begin to shut off the boom's line; flow of the others is not touched. */
    private void partSections() {
        for (int s = 0; s < sections.length; s++) {
            if (sections[s].isJoined() && !opens(s)) {
                keepEarlier();
                sections[s].leave(feedPa);
                compliance -= sections[s].compliance();
                apart++;
                stale = true;
            }
        }
        renew();
    }

    /** Which way a section's valve turns: its switch, unless it hangs. */
    private boolean opens(int section) {
        long bit = 1L << section;
        if ((shutMask & bit) != 0) {
            return false;
        }
        boolean hangsOpen = (openMask & bit) != 0 && !sections[section].isAsleep();
        return hangsOpen || (wantedMask & bit) != 0;
    }

    private void joinSections() {
        for (SectionLine section : sections) {
            if (!section.isJoined() && section.mayJoin(feedPa)) {
                keepEarlier();
                double heldM3 = compliance * feedPa + section.join();
                compliance += section.compliance();
                feedPa = heldM3 / compliance;
                apart--;
                stale = true;
            }
        }
        renew();
    }

    /** Solves the line for outlets and sections as they are now. */
    private void renew() {
        if (!stale) {
            return;
        }
        keepEarlier();
        stale = false;
        double perRootGravity = 1 / Math.sqrt(specificGravity);
        for (int s = 0; s < sections.length; s++) {
            SectionLine section = sections[s];
            double k = 0;
            for (int i = section.first(); i < section.end(); i++) {
                through[i] = section.isJoined() ? strainer[s] : 0;
                k += outlets.k()[i] * strainer[s] * perRootGravity;
            }
            section.outlets(k);
        }
        line.solve(outlets.k(), through);
        root = Math.sqrt(feedPa);
    }

    /** Puts what has flowed aside for {@link #drain}, by the outlets as they were. */
    private void keepEarlier() {
        if (flowedAny()) {
            hasEarlier = true;
            for (int i = 0; i < earlierM3.length; i++) {
                double flowedM3 = flowedM3(i);
                double besideM3 = flowedM3 * outlets.leakShare(i);
                leakedEarlierM3[i] += besideM3;
                earlierM3[i] += flowedM3 - besideM3;
            }
            clearFlowed();
        }
    }

    private boolean flowedAny() {
        boolean any = rootIntegral != 0;
        for (SectionLine section : sections) {
            any |= section.rootIntegral() != 0;
        }
        return any;
    }

    private double flowedM3(int outlet) {
        double flowedM3 = line.coefficient(outlet) * rootIntegral;
        if (apart > 0) {
            int s = sectionOf[outlet];
            flowedM3 += apartK(outlet, s) * sections[s].rootIntegral();
        }
        return flowedM3;
    }

    private double apartK(int outlet, int section) {
        return outlets.k()[outlet] * strainer[section] / Math.sqrt(specificGravity);
    }

    private void clearFlowed() {
        rootIntegral = 0;
        for (SectionLine section : sections) {
            section.clear();
        }
    }

    /**
     * Goes on by one step.
     *
     * @param dtS step, s; well below the shortest lag
     * @param speedMps true ground speed
     */
    public void step(double dtS, double speedMps) {
        begun = true;
        controller.step(dtS, speedMps, meteredM3ps, widthOnM, idleM3ps());
        airShare = slugs == null ? 0 : slugs.step(dtS);
        double liquidShare = airShare > 0 ? Math.sqrt(1 - airShare) : 1;
        double before = Math.sqrt(Math.max(feedPa, LEAST_PA));
        double pumpPa = pumpShare * pumpShare * spec.pumpPa();
        double conductIn = conductIn(pumpPa);
        double conductOut = line.sum() * liquidShare / before;
        double conductLeak = leakK / before;
        double takes = 0;
        double gives = 0;
        if (apart > 0) {
            for (int s = 0; s < sections.length; s++) {
                if (moves(s)) {
                    sections[s].turn(
                            dtS, opens(s), spec.lines().openS(), spec.lines().closeS());
                    sections[s].prepare(dtS, feedPa);
                    takes += sections[s].takes();
                    gives += sections[s].gives();
                }
            }
        }
        double afterPa = (compliance * feedPa + dtS * (conductIn * pumpPa + gives))
                / (compliance + dtS * (conductIn + conductOut + conductLeak + takes));
        double inM3 = dtS * conductIn * (pumpPa - afterPa);
        tankM3 += inM3;
        lineLeakM3 += dtS * conductLeak * afterPa;
        rootIntegral += dtS * liquidShare * afterPa / before;
        meteredM3ps = inM3 / dtS / (1 - airShare);
        if (apart > 0) {
            for (int s = 0; s < sections.length; s++) {
                if (moves(s)) {
                    sections[s].finish(dtS, afterPa);
                }
            }
        }
        feedPa = afterPa;
        root = Math.sqrt(feedPa);
        if (apart > 0) {
            joinSections();
        }
    }

    private boolean moves(int section) {
        return !sections[section].isJoined() && (!sections[section].isAsleep() || opens(section));
    }

    /** Conductance from the tank to the boom, m³/s per Pa: strainer and valve, and no more than the pump delivers. */
    private double conductIn(double pumpPa) {
        double valve = controller.opening() * valveK;
        if (plugged > 0) {
            double mesh = strainerK * (1 - plugged) / plugged;
            valve = valve * mesh / Math.sqrt(valve * valve + mesh * mesh);
        }
        double difference = pumpPa - feedPa;
        if (difference <= 0) {
            return 0;
        }
        double most = pumpShare * spec.lines().pumpM3ps() / Math.max(difference, LEAST_PA);
        return Math.min(valve / Math.sqrt(Math.max(difference, LEAST_PA)), most);
    }

    /** Liquid through the meter during the last step, m³/s. */
    public double flowM3ps() {
        return meteredM3ps * (1 - airShare);
    }

    /** What turned the meter during the last step, liquid and air, m³/s. */
    public double meteredM3ps() {
        return meteredM3ps;
    }

    /** What leaves all outlets now, leaks at them included, m³/s. */
    public double outletsFlowM3ps() {
        double flowM3ps = line.sum() * liquidRoot();
        if (apart > 0) {
            for (int i = 0; i < through.length; i++) {
                if (through[i] == 0) {
                    flowM3ps += outletFlowM3ps(i);
                }
            }
        }
        return flowM3ps;
    }

    private double liquidRoot() {
        return airShare > 0 ? root * Math.sqrt(1 - airShare) : root;
    }

    /** Pressure where the line enters the boom, Pa. */
    public double feedPressurePa() {
        return feedPa;
    }

    /** What leaves an outlet now, its leak included, m³/s. */
    public double outletFlowM3ps(int outlet) {
        int s = sectionOf[outlet];
        return sections[s].isJoined()
                ? line.coefficient(outlet) * liquidRoot()
                : apartK(outlet, s) * Math.sqrt(sections[s].drivingPa());
    }

    public double outletPressurePa(int outlet) {
        if (apart == 0) {
            return line.pressureShare(outlet) * feedPa;
        }
        int s = sectionOf[outlet];
        return sections[s].isJoined()
                ? line.pressureShare(outlet) * feedPa
                : strainer[s] * strainer[s] * sections[s].drivingPa();
    }

    /** Mean pressure at the outlets that are on, Pa; of the feed when none is. */
    public double meanOutletPressurePa() {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < through.length; i++) {
            if (isOn(i)) {
                sum += outletPressurePa(i);
                count++;
            }
        }
        return count > 0 ? sum / count : feedPa;
    }

    /** Whether an outlet's section is switched on, whatever it does. */
    public boolean isOn(int outlet) {
        return (wantedMask >> sectionOf[outlet] & 1) != 0;
    }

    /** Width that is switched on, m. */
    public double widthOnM() {
        return widthOnM;
    }

    /**
     * Hands over what has left each outlet in its streams since the last call.
     *
     * @return m³ of each outlet; the array is used again by the next call
     */
    public double[] drain() {
        if (apart > 0 || hasEarlier || outlets.isLeaking()) {
            keepEarlier();
            System.arraycopy(earlierM3, 0, drainedM3, 0, drainedM3.length);
            System.arraycopy(leakedEarlierM3, 0, leakedM3, 0, leakedM3.length);
            Arrays.fill(earlierM3, 0);
            Arrays.fill(leakedEarlierM3, 0);
            hasEarlier = false;
            hasLeaked = true;
            return drainedM3;
        }
        if (hasLeaked) {
            Arrays.fill(leakedM3, 0);
            hasLeaked = false;
        }
        for (int i = 0; i < drainedM3.length; i++) {
            drainedM3[i] = line.coefficient(i) * rootIntegral;
        }
        clearFlowed();
        return drainedM3;
    }

    /** What has leaked beside the streams of an outlet during the time that the last {@link #drain} was for, m³. */
    public double leakedM3(int outlet) {
        return leakedM3[outlet];
    }

    /** What has left the tank since the start, m³. */
    public double tankM3() {
        return tankM3;
    }

    /** What has leaked from the line before the outlets since the start, m³. */
    public double lineLeakM3() {
        return lineLeakM3;
    }

    /** What the lines hold beyond being full without pressure, m³; negative when some have drained. */
    public double heldM3() {
        double heldM3 = compliance * feedPa;
        for (SectionLine section : sections) {
            if (!section.isJoined()) {
                heldM3 += section.heldM3();
            }
        }
        return heldM3;
    }

    /** What can go wrong with it. */
    public PlumbingTrouble trouble() {
        return trouble;
    }

    /** Hands of {@link PlumbingTrouble}. */
    private final class Hands implements PlumbingTrouble {
        private void outlet(Runnable change) {
            keepEarlier();
            change.run();
            stale = true;
            renew();
        }

        @Override
        public void blockOutlet(int outlet, double share) {
            outlet(() -> outlets.block(outlet, share));
        }

        @Override
        public void wearOutlet(int outlet, double share) {
            outlet(() -> outlets.wear(outlet, share));
        }

        @Override
        public void leakOutlet(int outlet, double share) {
            outlet(() -> outlets.leak(outlet, share));
        }

        @Override
        public void loseOutlet(int outlet, double times) {
            outlet(() -> outlets.lose(outlet, times));
        }

        @Override
        public void plugSectionStrainer(int section, double share) {
            // The mesh's K is twice its outlets' at half shut: p_outlet/p = 1 / (1 + (share / (1 − share) / 2)²).
            double ratio = 0.5 * share / Math.max(1 - share, 1e-6);
            outlet(() -> strainer[section] = 1 / Math.sqrt(1 + ratio * ratio));
        }

        @Override
        public void plugStrainer(double share) {
            plugged = Math.min(share, 1 - 1e-6);
        }

        @Override
        public void leakLine(double flowM3ps, double atPa) {
            leakK = flowM3ps / Math.sqrt(atPa);
        }

        @Override
        public void drawAir(double share, Chance chance) {
            slugs = share > 0 ? new AirSlugs(share, chance) : null;
        }

        @Override
        public void weakenPump(double share) {
            pumpShare = 1 - share;
        }

        @Override
        public void holdShut(int section, boolean on) {
            shutMask = on ? shutMask | 1L << section : shutMask & ~(1L << section);
            partSections();
        }

        @Override
        public void holdOpen(int section, boolean on) {
            openMask = on ? openMask | 1L << section : openMask & ~(1L << section);
            partSections();
        }

        @Override
        public void swingValve(double share) {
            controller.swing(share);
        }

        @Override
        public void holdValve(boolean on) {
            controller.stuck(on);
        }

        @Override
        public void controllerMeter(double factor) {
            controller.meterFactor(factor);
        }

        @Override
        public void controllerSpeed(double factor) {
            controller.speedFactor(factor);
        }
    }
}
