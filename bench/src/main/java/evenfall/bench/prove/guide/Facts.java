package evenfall.bench.prove.guide;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.prove.measure.Component;
import evenfall.bench.prove.measure.Estimate;
import evenfall.bench.report.Json;
import java.util.List;

/** How results stand in the result file. */
final class Facts {
    private static final int DECIMALS = 9;

    private Facts() {}

    /**
     * An estimate with all that its uncertainty is made of.
     *
     * @param scale to the unit of the keys
     * @param unit end of each key, as {@code pulses_per_L}
     */
    static ObjectNode estimate(Estimate estimate, double scale, String unit) {
        ObjectNode node = Json.object();
        number(node, "value_" + unit, estimate.value() * scale);
        number(node, "expanded_uncertainty_" + unit, estimate.expanded() * scale);
        number(node, "standard_uncertainty_" + unit, estimate.standard() * scale);
        number(node, "coverage_factor", estimate.factor());
        number(node, "coverage_pct", 100 * Estimate.COVERAGE);
        dof(node, "effective_degrees_of_freedom", estimate.dof());
        ArrayNode components = node.putArray("components");
        for (Component component : estimate.components()) {
            ObjectNode one = components.addObject();
            one.put("name", component.name());
            one.put("type", component.type().name());
            number(one, "standard_uncertainty_" + unit, component.standard() * scale);
            dof(one, "degrees_of_freedom", component.dof());
        }
        return node;
    }

    private static void dof(ObjectNode node, String key, double dof) {
        if (Double.isInfinite(dof)) {
            node.put(key, "infinite");
        } else {
            node.set(key, Json.number(dof, 1));
        }
    }

    static void number(ObjectNode node, String key, double value) {
        node.set(key, Json.number(value, DECIMALS));
    }

    static void numbers(ObjectNode node, String key, List<Double> values, double scale) {
        ArrayNode array = node.putArray(key);
        for (double value : values) {
            array.add(Json.number(value * scale, DECIMALS));
        }
    }
}
