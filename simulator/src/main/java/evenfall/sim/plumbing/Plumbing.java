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

    private static final double LEAST_PA = 1;

    private final PlumbingSpec spec;
    private final BoomLayout boom;
    private final double specificGravity;
    private final RateController controller;
    private final OutletSet outlets;
    private final BoomLine line;
    private final Sections sections;
    private final double nominalK;
    private final Supply supply;
    private final PlumbingTrouble trouble;
    private final double[] through;
    private final double[] strainer;
    private final Delivered delivered;

    private double widthOnM;
    private boolean stale;
    private boolean begun;

    private double compliance;
    private double feedPa;
    private double root;
    private double rootIntegral;
    private double meteredM3ps;
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
        delivered = new Delivered(n);
        strainer = new double[boom.sections().size()];
        Arrays.fill(strainer, 1);
        Arrays.fill(through, 1);
        line.solve(outlets.k(), through);
        widthOnM = boom.widthM();
        nominalK = line.sum();
        supply = new Supply(spec, nominalK);
        double give = give();
        double[] k = new double[n];
        for (int i = 0; i < n; i++) {
            k[i] = outlets.k()[i] / Math.sqrt(specificGravity);
        }
        sections = new Sections(spec.lines(), boom, k, (1 - MAIN_SHARE) * give);
        compliance = give;
        controller = new RateController(spec, targetRateM, speedMps);
        trouble = new PlumbingHands(this, outlets, supply, controller);
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
        controller.settle(line.sum() / supply.valveK(1) * Math.sqrt(wantedPa / (spec.pumpPa() - wantedPa)), wantedM3ps);
        // Pressure at which the valve lets through what the boom takes.
        double valve = supply.valveK(controller.opening());
        feedPa = spec.pumpPa() * valve * valve / (valve * valve + line.sum() * line.sum());
        root = Math.sqrt(feedPa);
        meteredM3ps = line.sum() * root;
        controller.settle(controller.opening(), meteredM3ps);
    }

    /** Flow at the least pressure, of what is switched on as it was when it was new: the controller knows no better. */
    private double idleM3ps() {
        return nominalK * widthOnM / boom.widthM() * Math.sqrt(spec.idlePa());
    }

    /**
     * Switches sections; their valves take their time, and what stands behind them drains.
     *
     * @param mask bit 0 is the leftmost section, 1 is on
     */
    public void switchSections(long mask) {
        sections.switchTo(mask);
        widthOnM = 0;
        for (int i = 0; i < through.length; i++) {
            widthOnM += isOn(i) ? boom.spacingM() : 0;
        }
        partSections();
    }

    /**
     * Takes the sections that begin to shut off the boom's line; flow of the others is not touched. Sections that are off before the
     * first step have long been off.
     */
    private void partSections() {
        for (int s = 0; s < sections.count(); s++) {
            if (sections.leaves(s)) {
                keepEarlier();
                if (begun) {
                    sections.line(s).leave(feedPa);
                } else {
                    sections.line(s).leaveEmpty();
                }
                compliance -= sections.line(s).compliance();
                sections.parted();
                stale = true;
            }
        }
        renew();
        if (!begun && widthOnM > 0 && line.sum() > 0) {
            settle();
        }
    }

    private void joinSections() {
        for (int s = 0; s < sections.count(); s++) {
            SectionLine section = sections.line(s);
            if (!section.isJoined() && section.mayJoin(feedPa)) {
                keepEarlier();
                double heldM3 = compliance * feedPa + section.join();
                compliance += section.compliance();
                feedPa = heldM3 / compliance;
                sections.joined();
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
        for (int s = 0; s < sections.count(); s++) {
            SectionLine section = sections.line(s);
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
        if (rootIntegral != 0 || sections.anyFlowed()) {
            for (int i = 0; i < through.length; i++) {
                delivered.add(i, flowedM3(i), outlets.leakShare(i));
            }
            rootIntegral = 0;
            sections.clear();
        }
    }

    private double flowedM3(int outlet) {
        double flowedM3 = line.coefficient(outlet) * rootIntegral;
        if (sections.apart() > 0) {
            int s = sections.of(outlet);
            flowedM3 += apartK(outlet, s) * sections.line(s).rootIntegral();
        }
        return flowedM3;
    }

    private double apartK(int outlet, int section) {
        return outlets.k()[outlet] * strainer[section] / Math.sqrt(specificGravity);
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
        double pumpPa = supply.pumpPa();
        double conductIn = supply.conductance(controller.opening(), feedPa);
        double conductOut = line.sum() * liquidShare / before;
        double conductLeak = leakK / before;
        boolean someApart = sections.apart() > 0;
        if (someApart) {
            sections.prepare(dtS, feedPa);
        }
        double takes = someApart ? sections.takes() : 0;
        double gives = someApart ? sections.gives() : 0;
        double afterPa = (compliance * feedPa + dtS * (conductIn * pumpPa + gives))
                / (compliance + dtS * (conductIn + conductOut + conductLeak + takes));
        double inM3 = dtS * conductIn * (pumpPa - afterPa);
        tankM3 += inM3;
        lineLeakM3 += dtS * conductLeak * afterPa;
        rootIntegral += dtS * liquidShare * afterPa / before;
        meteredM3ps = inM3 / dtS / (1 - airShare);
        feedPa = afterPa;
        root = Math.sqrt(feedPa);
        if (someApart) {
            sections.finish(dtS, afterPa);
            joinSections();
        }
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
        if (sections.apart() > 0) {
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
        int s = sections.of(outlet);
        return sections.line(s).isJoined()
                ? line.coefficient(outlet) * liquidRoot()
                : apartK(outlet, s) * Math.sqrt(sections.line(s).drivingPa());
    }

    public double outletPressurePa(int outlet) {
        if (sections.apart() == 0) {
            return line.pressureShare(outlet) * feedPa;
        }
        int s = sections.of(outlet);
        return sections.line(s).isJoined()
                ? line.pressureShare(outlet) * feedPa
                : strainer[s] * strainer[s] * sections.line(s).drivingPa();
    }

    /** {@link #outletPressurePa} of all outlets, into a row that begins anywhere in an array. */
    public void outletPressuresPa(double[] into, int from) {
        if (sections.apart() == 0) {
            line.pressuresPa(feedPa, into, from);
            return;
        }
        for (int i = 0; i < through.length; i++) {
            into[from + i] = outletPressurePa(i);
        }
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
        return sections.isOn(sections.of(outlet));
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
        if (sections.apart() > 0 || !delivered.isEmpty() || outlets.isLeaking()) {
            keepEarlier();
            return delivered.hand();
        }
        double[] drainedM3 = delivered.handPlain();
        line.flowed(rootIntegral, drainedM3);
        rootIntegral = 0;
        return drainedM3;
    }

    /** Whether anything has leaked at the outlets during the time that the last {@link #drain} was for. */
    public boolean leaked() {
        return delivered.leaked();
    }

    /** What has leaked beside the streams of an outlet during the time that the last {@link #drain} was for, m³. */
    public double leakedM3(int outlet) {
        return delivered.leakedM3(outlet);
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
        return compliance * feedPa + sections.heldM3();
    }

    /** What can go wrong with it. */
    public PlumbingTrouble trouble() {
        return trouble;
    }

    /** Changes outlets or strainers; what has flowed so far belongs to them as they were. */
    void change(Runnable change) {
        keepEarlier();
        change.run();
        stale = true;
        renew();
    }

    void strainer(int section, double rootOfShare) {
        strainer[section] = rootOfShare;
    }

    void leak(double k) {
        leakK = k;
    }

    void air(@Nullable AirSlugs slugs) {
        this.slugs = slugs;
    }

    void holdShut(int section, boolean on) {
        sections.holdShut(section, on);
        partSections();
    }

    void holdOpen(int section, boolean on) {
        sections.holdOpen(section, on);
        partSections();
    }
}
