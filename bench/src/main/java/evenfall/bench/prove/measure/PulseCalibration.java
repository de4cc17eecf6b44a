package evenfall.bench.prove.measure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The constant of a sensor that counts, from runs in one or several groups: pulses per cubic metre of a meter from catches at
 * several flows, pulses per metre of a wheel from a course on several grounds.
 *
 * <p>The constant is the mean of the groups' means, so that each group weighs the same. Its doubt: scatter of the runs around
 * their group's mean, pooled over the groups (type A), and what is off the same way in every run (type B). That the constant
 * differs from group to group is not doubt about it but a finding of its own, {@link #worstGroup} and {@link #groupRange}.
 *
 * @param groups in the order in which they came
 * @param constant counts per unit of amount
 * @param runSd pooled standard deviation of one run's constant, or what rounding alone would make of it, whichever is more
 */
public record PulseCalibration(List<Group> groups, Estimate constant, double runSd) {
    /** Fewest runs in each group: two would make a spread of one difference. */
    public static final int FEWEST_RUNS = 3;

    /**
     * @param name flow setting or kind of ground
     * @param amountPerS mean flow or speed of its runs
     * @param constant of this group alone
     * @param runs constant of each run
     */
    public record Group(String name, double amountPerS, Estimate constant, List<Double> runs) {
        public Group {
            runs = List.copyOf(runs);
        }
    }

    public PulseCalibration {
        groups = List.copyOf(groups);
    }

    /**
     * @throws IllegalArgumentException when no group has two runs
     */
    public static PulseCalibration of(List<PulseRun> runs, AmountDoubt doubt) {
        Map<String, List<PulseRun>> byGroup = new LinkedHashMap<>();
        for (PulseRun run : runs) {
            byGroup.computeIfAbsent(run.group(), name -> new ArrayList<>()).add(run);
        }
        int dof = runs.size() - byGroup.size();
        if (dof < 1) {
            throw new IllegalArgumentException("no group has two runs");
        }
        double runSd = Math.max(pooledSd(byGroup, dof), roundingSd(runs, doubt));
        List<Group> groups = new ArrayList<>();
        double sum = 0;
        double shares = 0;
        for (Map.Entry<String, List<PulseRun>> entry : byGroup.entrySet()) {
            Group group = group(entry.getKey(), entry.getValue(), runSd, dof, doubt);
            groups.add(group);
            sum += group.constant().value();
            shares += 1.0 / entry.getValue().size();
        }
        Component scatter = scatter(runSd * Math.sqrt(shares) / groups.size(), dof);
        return new PulseCalibration(groups, with(sum / groups.size(), scatter, runs, doubt), runSd);
    }

    private static Group group(String name, List<PulseRun> runs, double runSd, int dof, AmountDoubt doubt) {
        List<Double> each = new ArrayList<>();
        double pace = 0;
        double sum = 0;
        for (PulseRun run : runs) {
            each.add(run.perUnit());
            sum += run.perUnit();
            pace += run.amountPerS();
        }
        Component scatter = scatter(runSd / Math.sqrt(runs.size()), dof);
        return new Group(name, pace / runs.size(), with(sum / runs.size(), scatter, runs, doubt), each);
    }

    private static Component scatter(double standard, int dof) {
        return Component.repeats("scatter of the runs", standard, dof);
    }

    /** What measures the amount is off by the same each time, which weighs more the smaller the amount. */
    private static Estimate with(double constant, Component scatter, List<PulseRun> runs, AmountDoubt doubt) {
        double perAmount = 0;
        for (PulseRun run : runs) {
            perAmount += 1 / run.amount();
        }
        perAmount /= runs.size();
        List<Component> components = new ArrayList<>();
        components.add(scatter);
        if (doubt.halfWidth() > 0) {
            components.add(Component.within(doubt.fixedFrom(), constant * doubt.halfWidth() * perAmount));
        }
        if (doubt.share() > 0) {
            components.add(Component.within(doubt.shareFrom(), constant * doubt.share()));
        }
        return new Estimate(constant, components);
    }

    private static double pooledSd(Map<String, List<PulseRun>> byGroup, int dof) {
        double squares = 0;
        for (List<PulseRun> runs : byGroup.values()) {
            Spread spread =
                    Spread.of(runs.stream().mapToDouble(PulseRun::perUnit).toArray());
            squares += spread.dof() * spread.sd() * spread.sd();
        }
        return Math.sqrt(squares / dof);
    }

    private static double roundingSd(List<PulseRun> runs, AmountDoubt doubt) {
        double squares = 0;
        for (PulseRun run : runs) {
            double sd = run.perUnit() * doubt.roundingShare(run);
            squares += sd * sd;
        }
        return Math.sqrt(squares / runs.size());
    }

    /** Greatest difference of a group's constant from the constant, over it: how linear a meter is. */
    public double worstGroup() {
        double worst = 0;
        for (Group group : groups) {
            worst = Math.max(worst, Math.abs(group.constant().value() / constant.value() - 1));
        }
        return worst;
    }

    /** Greatest less smallest of the groups' constants, over the constant: how far grounds or flows lie apart. */
    public double groupRange() {
        double most = Double.NEGATIVE_INFINITY;
        double least = Double.POSITIVE_INFINITY;
        for (Group group : groups) {
            most = Math.max(most, group.constant().value());
            least = Math.min(least, group.constant().value());
        }
        return (most - least) / constant.value();
    }

    /** Standard deviation of one run over the constant. */
    public double repeatability() {
        return runSd / constant.value();
    }

    /**
     * How many runs in all would bring the constant within a wanted share, if they scatter as these do.
     *
     * @param wantedShare expanded uncertainty over the constant
     * @return 0 when no sensible number does: then what measures the amount is the limit
     */
    public int runsNeeded(double wantedShare) {
        double fixed = 0;
        for (Component component : constant.components()) {
            if (component.type() == Component.Type.B) {
                fixed += component.standard() * component.standard();
            }
        }
        return Repeats.needed(runSd, groups.size(), Math.sqrt(fixed), wantedShare * constant.value());
    }
}
