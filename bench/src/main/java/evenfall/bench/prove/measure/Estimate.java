package evenfall.bench.prove.measure;

import java.util.List;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * A result with its uncertainty at 95 % coverage.
 *
 * <p>"95 %" is 95.45 %, so that the factor is 2 where all is well known: the custom of calibration certificates (EA-4/02, from
 * memory; the GUM's table G.2 has a column for it).
 *
 * @param value the result
 * @param components what its doubt is made of, in the unit of the result; taken as independent
 */
public record Estimate(double value, List<Component> components) {
    /** Share of cases in which the interval shall hold the truth: the normal distribution within two standard deviations. */
    public static final double COVERAGE = 0.9545;

    /** From here on the factor of Student's t equals the normal one to a part in ten million. */
    private static final double MANY = 1e7;

    public Estimate {
        components = List.copyOf(components);
    }

    public static Estimate of(double value, Component... components) {
        return new Estimate(value, List.of(components));
    }

    /** Combined standard uncertainty: the root of the sum of squares (GUM 5.1.2). */
    public double standard() {
        double sum = 0;
        for (Component component : components) {
            sum += component.standard() * component.standard();
        }
        return Math.sqrt(sum);
    }

    /** Effective degrees of freedom by Welch and Satterthwaite (GUM G.4.1, formula G.2b). */
    public double dof() {
        double sum = 0;
        for (Component component : components) {
            double squared = component.standard() * component.standard();
            sum += squared * squared / component.dof();
        }
        double combined = standard();
        return sum == 0 ? Double.POSITIVE_INFINITY : combined * combined * combined * combined / sum;
    }

    /** Coverage factor k: Student's t at the effective degrees of freedom, cut to a whole number (GUM G.4.1, G.6.4). */
    public double factor() {
        double dof = dof();
        return factor(dof > MANY ? dof : Math.max(1, Math.floor(dof)), COVERAGE);
    }

    /** Within how many standard uncertainties a share of all cases lies. */
    static double factor(double dof, double coverage) {
        double upper = 0.5 + 0.5 * coverage;
        return dof > MANY
                ? new NormalDistribution(0, 1).inverseCumulativeProbability(upper)
                : new TDistribution(dof).inverseCumulativeProbability(upper);
    }

    /** Expanded uncertainty U: factor times standard uncertainty. */
    public double expanded() {
        return factor() * standard();
    }

    /** Expanded uncertainty over the value's size. */
    public double relative() {
        return expanded() / Math.abs(value);
    }

    /** The same result in another unit. */
    public Estimate scaled(double factor) {
        return new Estimate(
                value * factor,
                components.stream()
                        .map(c -> new Component(c.name(), c.type(), c.standard() * Math.abs(factor), c.dof()))
                        .toList());
    }

    /** Whether ± U around the value holds a number. */
    public boolean holds(double truth) {
        return Math.abs(truth - value) <= expanded();
    }
}
