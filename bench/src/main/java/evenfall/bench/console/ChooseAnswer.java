package evenfall.bench.console;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.choose.Choice;
import evenfall.bench.choose.ChooseJson;
import evenfall.bench.choose.ChoosePage;
import evenfall.bench.choose.Job;
import evenfall.bench.choose.Prices;
import evenfall.bench.choose.Span;
import evenfall.bench.choose.Wander;
import evenfall.bench.choose.Weights;
import evenfall.bench.report.Json;
import evenfall.config.ConfigException;
import evenfall.liquid.Liquid;
import evenfall.liquid.Liquids;
import evenfall.outlet.OutletCatalogue;
import evenfall.outlet.OutletDesign;
import evenfall.quantity.TradeUnits;
import evenfall.quantity.Units;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Which outlets to fit, answered for a page: what it shows, and the same as JSON. */
final class ChooseAnswer {
    private static final double PERCENT = 0.01;
    private static final int MOST_OUTLETS = 1000;

    private ChooseAnswer() {}

    static ObjectNode of(JsonNode asked) throws Refusal, ConfigException {
        double spacingM = number(asked, "spacing_m", 0.1, 3);
        long count = Math.round(number(asked, "width_m", 1, 100) / spacingM);
        if (count < 1 || count > MOST_OUTLETS) {
            throw new Refusal(
                    400, count + " outlets fit on the boom; allowed: a width and a spacing that give 1 to 1000.");
        }
        double share = number(asked, "thiosulphate_share", 0, 1);
        Liquid plain = product(asked.path("product").asText());
        Liquid product = share > 0 ? plain.blendedWith(Liquids.THIOSULPHATE, share) : plain;
        Job job = new Job(
                (int) count,
                spacingM,
                number(asked, "row_m", 0.01, 3),
                span(asked, "rate_low_Lpha", "rate_high_Lpha", 1, 5000, TradeUnits.LPHA_M),
                span(asked, "speed_low_mps", "speed_high_mps", 0.2, 17, 1),
                product,
                plain.id().equals(Liquids.THIOSULPHATE.id()) ? 1 : share,
                null,
                number(asked, "height_m", 0.02, 2),
                new Wander(Wander.Kind.STANDARD_DEVIATION, number(asked, "wander_m", 0, 1)),
                number(asked, "limit_cv_pct", 0.1, 100) * PERCENT,
                null);
        List<OutletDesign> designs = new ArrayList<>();
        for (String id : OutletCatalogue.ids()) {
            designs.add(OutletCatalogue.find(id, Path.of("")));
        }
        Choice choice = Choice.of(job, designs, Prices.none(), Weights.equal());
        Units units = asked.path("units").asText().equals("us") ? Units.US : Units.METRIC;
        ObjectNode answer = Json.object();
        answer.put("html", new ChoosePage(choice, units).content());
        answer.set("answer", ChooseJson.of(choice));
        return answer;
    }

    private static Liquid product(String id) throws Refusal {
        return Liquids.byId(id)
                .orElseThrow(() -> new Refusal(
                        400,
                        "There is no such product; allowed: "
                                + Liquids.all().stream().map(Liquid::id).collect(Collectors.joining(", ")) + "."));
    }

    private static Span span(JsonNode asked, String lowKey, String highKey, double least, double most, double unit)
            throws Refusal {
        double low = number(asked, lowKey, least, most);
        double high = number(asked, highKey, least, most);
        if (low > high) {
            throw new Refusal(400, lowKey + " is above " + highKey + "; allowed: the lower one first.");
        }
        return new Span(low * unit, high * unit);
    }

    private static double number(JsonNode asked, String key, double least, double most) throws Refusal {
        JsonNode value = asked.path(key);
        if (!value.isNumber() || !(value.asDouble() >= least && value.asDouble() <= most)) {
            throw new Refusal(400, key + " cannot be used; allowed: a number from " + least + " to " + most + ".");
        }
        return value.asDouble();
    }
}
