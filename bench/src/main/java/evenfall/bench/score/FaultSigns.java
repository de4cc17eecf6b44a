package evenfall.bench.score;

import evenfall.quantity.TradeUnits;
import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import evenfall.sim.fault.ScriptedFault;
import evenfall.sim.ground.RoughnessClass;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.sensor.GnssReceiver;

/**
 * Which faults can be told, from which size on, and how soon. From the physics and the sensors' tolerance alone, before anyone tuned
 * an alert, but for a leaking line and a meter that is wrong from the start; {@code bench/docs/scoring.md} derives each number.
 */
final class FaultSigns {
    /** How well a monitor knows flow and pressure after all calibration, standard deviations as shares. Common practice, no source. */
    private static final double FLOW_KNOWN = 0.01;

    private static final double PRESSURE_KNOWN = 0.01;

    /** Three standard deviations of {@code Q/√p}: less cannot be told from a machine that is as it should be. */
    static final double LEAST_CONDUCTANCE =
            3 * Math.sqrt(FLOW_KNOWN * FLOW_KNOWN + 0.25 * PRESSURE_KNOWN * PRESSURE_KNOWN);

    /**
     * What a machine's {@code Q/√p} may be off by before anybody has calibrated it: an indicator of flow by 5 %, a gauge by 10 %, of which half
     * counts (French order of 18 December 2008, NOR AGRP0828914A, 5.5.2 and 5.4.2.2), at their worst together.
     */
    private static final double UNCALIBRATED = 0.05 + 0.5 * 0.10;

    /** Below this the transmitter's noise of 0.8 kPa is no longer small beside 1 % (0.8 of 50 kPa is 1.6 %), Pa. */
    private static final double LEAST_PRESSURE_PA = 50_000;

    /** A change of flow or pressure: 28 m of ground at 10 km/h, a choice of ours. */
    private static final double BALANCE_S = 10;

    /** Two seconds of no pulses, and time to be sure. */
    private static final double NO_PULSES_S = 5;

    /** A height that does not move: a hundred echoes. */
    private static final double FROZEN_S = 5;

    /** A height that scatters: two hundred echoes. */
    private static final double SCATTER_S = 10;

    /** 36 seconds in which both pairs of sensors change by what can be told, of which rough ground gives about one in three; and half more. */
    private static final double CHANGED_OVER_S = 180;

    /** From here on a loose sensor steps further than a boom can, m. */
    private static final double LEAST_LOOSE_M = 0.06;

    /** Ten of two hundred echoes at twice their distance. */
    private static final double LEAST_DOUBLE = 0.05;

    /** Behind the rig's time of silence and its hold, to say so. */
    private static final double TO_SAY_S = 2;

    /** A fault of the receiver that would take longer to show is not looked for. */
    private static final double LONGEST_WAIT_S = 20;

    /** Of an exponential distribution, 95 % lie within this many means: ln 20. */
    private static final double MEANS_95 = 3;

    private static final double LEAK_PA = 200_000;

    private final BoomLayout boom;
    private final Rig.Limits limits;
    private final double pulsesPerM3;
    private final boolean balance;
    private final boolean pairsOnRoughGround;
    private final GnssReceiver.Spec gnss;

    FaultSigns(Scenario scenario) {
        this.boom = scenario.world().fitted().boom();
        this.limits = scenario.belief().limits();
        this.pulsesPerM3 = scenario.world().fitted().pulsesPerM3().orElse(0);
        this.balance = scenario.belief().sensors().flow().isPresent()
                && scenario.belief().sensors().pressure().isPresent();
        this.gnss = scenario.world().gnss();
        this.pairsOnRoughGround = scenario.belief().sensors().heights().size() >= 4
                && scenario.world()
                        .roughness()
                        .filter(roughness -> roughness.compareTo(RoughnessClass.C) >= 0)
                        .isPresent();
    }

    FaultSign of(ScriptedFault scripted) {
        double much = scripted.howMuch();
        int places = scripted.places().size();
        return switch (scripted.fault().id()) {
            case "outlet-blocked", "outlet-worn", "outlet-leaking" -> balance(m -> places * much / outletsOn(m));
            case "outlet-lost" -> balance(m -> places * (much - 1) / outletsOn(m));
            case "section-strainer-plugged" -> balance(m -> (1 - passes(much)) * outletsOf(scripted) / outletsOn(m));
            case "section-stays-shut" -> balance(m -> isOn(scripted, m) ? outletsOf(scripted) / outletsOn(m) : 0);
            case "section-stays-open" -> FaultSign.when(NO_PULSES_S, (now, onset) -> runsOn(scripted, now));
            case "switch-dead" ->
                balance(m ->
                        isOn(scripted, m) ? outletsOf(scripted) / Math.max(1, outletsOn(m) - outletsOf(scripted)) : 0);
            case "line-leaking" ->
                balance(m -> much
                        * TradeUnits.LPM_M3PS
                        * Math.sqrt(m.flows().feedPressurePa() / LEAK_PA)
                        / m.flows().outletsM3ps());
            case "meter-factor-wrong" -> balance(m -> much);
            case "meter-stuck" -> FaultSign.when(NO_PULSES_S, (now, onset) -> isSpraying(now));
            case "meter-hum" -> FaultSign.when(BALANCE_S, (now, onset) -> hums(much / pulsesPerM3, now));
            case "pressure-offset" -> balance(m -> read(m, m.flows().feedPressurePa() + much * TradeUnits.KPA_PA));
            case "pressure-span" -> balance(m -> read(m, m.flows().feedPressurePa() * (1 + much)));
            case "pressure-plugged" ->
                FaultSign.when(
                        BALANCE_S,
                        (now, onset) -> balance
                                && isSpraying(now)
                                && Math.abs(read(now, onset.flows().feedPressurePa())) >= LEAST_CONDUCTANCE);
            case "height-foam", "height-stuck" ->
                FaultSign.when(FROZEN_S, (now, onset) -> now.speedMps() >= limits.walkingMps());
            case "height-pair-swapped" ->
                FaultSign.when(
                        CHANGED_OVER_S, (now, onset) -> pairsOnRoughGround && now.speedMps() >= limits.walkingMps());
            case "height-loose" -> scatter(much >= LEAST_LOOSE_M);
            case "height-double-echo" -> scatter(much >= LEAST_DOUBLE);
            case "height-deaf", "pressure-loop-broken", "hub-hung", "port-unplugged", "gnss-fix-lost" ->
                FaultSign.when(silenceS() + TO_SAY_S, (now, onset) -> true);
            case "hub-brown-out" -> brownOut(scripted);
            case "gnss-trees" -> trees(much);
            case "strainer-plugged",
                    "pump-weak",
                    "valve-hunting",
                    "valve-stuck",
                    "controller-meter-wrong",
                    "controller-speed-wrong",
                    "wing-stuck",
                    "height-control-dead",
                    "height-control-slow",
                    "boom-set-wrong" -> FaultSign.truth();
            default -> FaultSign.never();
        };
    }

    @FunctionalInterface
    private interface Signal {
        double at(TruthMoment moment);
    }

    /** Whether {@code Q/√p} that is off by a share from the start is more than nobody having calibrated it explains. */
    static boolean showsUncalibrated(double off) {
        return Math.abs(off) > UNCALIBRATED;
    }

    /** A meter that has been wrong from the start, by which {@code Q/√p} is off by a share. */
    FaultSign fromTheStart(double off) {
        return balance(m -> off);
    }

    /** It shows where it changes {@code Q/√p} over what the outlets that are on let through by more than is known. */
    private FaultSign balance(Signal signal) {
        return FaultSign.when(
                BALANCE_S, (now, onset) -> balance && isSpraying(now) && Math.abs(signal.at(now)) >= LEAST_CONDUCTANCE);
    }

    private FaultSign scatter(boolean enough) {
        return enough ? FaultSign.when(SCATTER_S, (now, onset) -> true) : FaultSign.never();
    }

    private boolean isSpraying(TruthMoment moment) {
        return moment.speedMps() >= limits.walkingMps()
                && moment.flows().widthOnM() > 0
                && moment.flows().feedPressurePa() >= LEAST_PRESSURE_PA;
    }

    private double outletsOn(TruthMoment moment) {
        return moment.flows().widthOnM() / boom.spacingM();
    }

    private double outletsOf(ScriptedFault scripted) {
        int n = 0;
        for (int section : scripted.places()) {
            n += boom.sections().get(section).outletCount();
        }
        return n;
    }

    private static boolean isOn(ScriptedFault scripted, TruthMoment moment) {
        boolean on = true;
        for (int section : scripted.places()) {
            on &= (moment.flows().sectionMask() >>> section & 1) == 1;
        }
        return on;
    }

    private boolean runsOn(ScriptedFault scripted, TruthMoment now) {
        if (isOn(scripted, now)) {
            return false;
        }
        TruthMoment.Flows flows = now.flows();
        return flows.widthOnM() > 0
                ? balance && isSpraying(now) && outletsOf(scripted) / outletsOn(now) >= LEAST_CONDUCTANCE
                : flows.outletsM3ps() > ScoringRules.RUNS_ON_PART * flows.machineM3ps();
    }

    private boolean hums(double humM3ps, TruthMoment now) {
        return isSpraying(now)
                ? balance && humM3ps / now.flows().outletsM3ps() >= LEAST_CONDUCTANCE
                : now.flows().widthOnM() == 0
                        && humM3ps > ScoringRules.RUNS_ON_PART * now.flows().machineM3ps();
    }

    /** Change of {@code Q/√p} where the transmitter shows another pressure than there is. */
    private static double read(TruthMoment moment, double shownPa) {
        return shownPa > 0 ? Math.sqrt(moment.flows().feedPressurePa() / shownPa) - 1 : 1;
    }

    /** Share of the flow that a mesh lets through whose K is twice its outlets' at half shut, as the simulator has it. */
    private static double passes(double share) {
        double ratio = 0.5 * share / Math.max(1 - share, 1e-6);
        return 1 / Math.sqrt(1 + ratio * ratio);
    }

    /** Dark for long enough it is silent; one that is shorter is told by the boot count when it is over. */
    private FaultSign brownOut(ScriptedFault scripted) {
        double answerS = silenceS() + TO_SAY_S;
        double darkS = scripted.forS().orElse(Double.POSITIVE_INFINITY);
        return new FaultSign((now, onset) -> true, 0, darkS >= answerS ? answerS : darkS + answerS, false);
    }

    /** How long nothing must come before it counts as silence that lasts, s. */
    private double silenceS() {
        return limits.silenceS() + limits.holdS();
    }

    /** The speed is lost when all epochs of silence and hold are missed; how long that takes to happen. */
    private FaultSign trees(double share) {
        double perS = 1e6 / gnss.everyUs();
        double run = silenceS() * perS;
        double startsPerS = Math.pow(share, run) * (1 - share) * perS;
        double waitS = share >= 1 ? 0 : MEANS_95 / startsPerS;
        return waitS <= LONGEST_WAIT_S
                ? FaultSign.when(waitS + silenceS() + TO_SAY_S, (now, onset) -> true)
                : FaultSign.never();
    }
}
