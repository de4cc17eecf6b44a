package evenfall.bench.score;

import evenfall.pattern.BoomPattern;
import evenfall.pattern.RowMeasures;
import evenfall.rig.BoomLayout;
import evenfall.sim.fault.ScriptedFault;
import evenfall.sim.scenario.FittedSpec;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.world.TruthSample;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What a machine shows whose sensors are wrong in a way that no sensor fitted could tell: a meter that gives other pulses than the
 * rig file says where no tank gauge is there to tell of it, and heights that are those of a crop, of another place, or of the other wing.
 *
 * <p>Worked out from the truth and from what the scenario put wrong, never from what the monitor said. A monitor that judges these by the
 * public rules is misled, not wrong.
 */
final class Unseen {
    private static final Set<String> HEIGHTS =
            Set.of("height-canopy", "height-mounted-wrong", "height-misplaced", "heights-swapped");

    private final FittedSpec fitted;
    private final double pulsesTimes;
    private final List<ScriptedFault> faults;
    private final BoomPattern pattern;
    private final double[] outletM;
    private final double[] heightM;
    private final boolean[] known;
    private final boolean[] open;
    private final double outerFromM;

    private Unseen(Scenario scenario) {
        fitted = scenario.world().fitted();
        pulsesTimes = scenario.belief().sensors().tank().isPresent() ? 1 : pulsesTimes(scenario);
        faults = new ArrayList<>();
        for (ScriptedFault fault : scenario.world().faults()) {
            if (HEIGHTS.contains(fault.fault().id())) {
                faults.add(fault);
            }
        }
        BoomLayout boom = fitted.boom();
        pattern = new BoomPattern(
                boom, fitted.outlet(), scenario.belief().target().heightM(), fitted.specificGravity());
        outletM = new double[boom.outlets()];
        for (int i = 0; i < outletM.length; i++) {
            outletM[i] = boom.outletRightM(i);
        }
        heightM = new double[boom.outlets()];
        known = new boolean[boom.outlets()];
        Arrays.fill(known, true);
        open = new boolean[boom.outlets()];
        outerFromM = boom.hingeM() + 0.5 * (0.5 * boom.widthM() - boom.hingeM());
    }

    static Unseen of(Scenario scenario) {
        return new Unseen(scenario);
    }

    /** Pulses that the meter gives for each that the rig file expects; 1 where there is no meter. */
    static double pulsesTimes(Scenario scenario) {
        OptionalDouble gives = scenario.world().fitted().pulsesPerM3();
        var flow = scenario.belief().sensors().flow();
        return gives.isPresent() && flow.isPresent()
                ? gives.getAsDouble() / flow.get().pulsesPerM3()
                : 1;
    }

    /** What is shown at a moment; the moment itself where nothing unseen stands. */
    TruthMoment shown(TruthSample sample, TruthMoment truth) {
        List<ScriptedFault> now = new ArrayList<>();
        for (ScriptedFault fault : faults) {
            if (sample.timeUs() >= fault.fromUs() && sample.timeUs() < fault.untilUs()) {
                now.add(fault);
            }
        }
        Double error = truth.rateError();
        Double shownError = error == null ? null : (1 + error) * pulsesTimes - 1;
        if (now.isEmpty()) {
            return pulsesTimes == 1 ? truth : truth.shown(shownError);
        }
        lookAtHeights(sample, now);
        BoomLayout boom = fitted.boom();
        for (int n = 0; n < boom.sections().size(); n++) {
            BoomLayout.Section section = boom.sections().get(n);
            Arrays.fill(open, section.firstOutlet(), section.endOutlet(), (sample.sectionMask() >>> n & 1) == 1);
        }
        double factor = fitted.outlet().speedFactor(sample.pressurePa(), fitted.specificGravity());
        pattern.compute(heightM, known, open, factor);
        double halfM = 0.5 * boom.widthM();
        double hingeM = boom.hingeM();
        return truth.shown(
                shownError,
                meanM(-halfM, -outerFromM, truth.leftWingM()),
                meanM(outerFromM, halfM, truth.rightWingM()),
                rows(-halfM, halfM),
                rows(-hingeM, halfM),
                rows(-halfM, hingeM),
                rows(-hingeM, hingeM));
    }

    /** Each outlet's height, and on it what the sensors beside it show too much, on straight lines between them. */
    private void lookAtHeights(TruthSample sample, List<ScriptedFault> now) {
        List<FittedSpec.Height> sensors = fitted.heights();
        double[] tooMuchM = new double[sensors.size()];
        for (int i = 0; i < tooMuchM.length; i++) {
            double atM = sensors.get(i).rightM();
            double seesM = atM;
            double moreM = 0;
            for (ScriptedFault fault : now) {
                boolean its = fault.places().contains(i);
                switch (fault.fault().id()) {
                    case "heights-swapped" ->
                        seesM = sensors.get(sensors.size() - 1 - i).rightM();
                    case "height-misplaced" -> seesM += its ? fault.howMuch() : 0;
                    case "height-canopy" -> moreM -= its ? fault.howMuch() : 0;
                    default -> moreM += its ? fault.howMuch() : 0;
                }
            }
            tooMuchM[i] = trueM(sample, seesM) - trueM(sample, atM) + moreM;
        }
        for (int outlet = 0; outlet < heightM.length; outlet++) {
            heightM[outlet] = Math.max(0, sample.heightM(outlet) + between(sensors, tooMuchM, outletM[outlet]));
        }
    }

    private double trueM(TruthSample sample, double rightM) {
        double at = (rightM - outletM[0]) / fitted.boom().spacingM();
        int last = outletM.length - 1;
        int below = (int) Math.max(0, Math.min(last - 1, Math.floor(at)));
        double part = Math.max(0, Math.min(1, at - below));
        return (1 - part) * sample.heightM(below) + part * sample.heightM(Math.min(last, below + 1));
    }

    private static double between(List<FittedSpec.Height> sensors, double[] moreM, double atM) {
        int right = 0;
        while (right < moreM.length && sensors.get(right).rightM() < atM) {
            right++;
        }
        if (right == 0 || right == moreM.length) {
            return moreM[Math.min(right, moreM.length - 1)];
        }
        double fromM = sensors.get(right - 1).rightM();
        double part = (atM - fromM) / (sensors.get(right).rightM() - fromM);
        return (1 - part) * moreM[right - 1] + part * moreM[right];
    }

    private double meanM(double fromM, double toM, double none) {
        double sum = 0;
        int n = 0;
        for (int i = 0; i < outletM.length; i++) {
            if (outletM[i] >= fromM && outletM[i] <= toM) {
                sum += heightM[i];
                n++;
            }
        }
        return n == 0 ? none : sum / n;
    }

    private @Nullable Double rows(double fromM, double toM) {
        RowMeasures rows = pattern.rowMeasures(fromM, toM);
        return rows == null ? null : rows.rowCv();
    }
}
