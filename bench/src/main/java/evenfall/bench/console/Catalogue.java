package evenfall.bench.console;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.report.Json;
import evenfall.config.ConfigException;
import evenfall.liquid.Liquid;
import evenfall.liquid.Liquids;
import evenfall.outlet.OutletCatalogue;
import evenfall.quantity.TradeUnits;
import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import evenfall.sim.fault.Fault;
import evenfall.sim.fault.Faults;
import evenfall.sim.fault.PlaceKind;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** What a page may ask for: scenarios, outlet types, products and faults, as JSON. */
final class Catalogue {
    private Catalogue() {}

    static ObjectNode json() throws ConfigException {
        ObjectNode root = Json.object();
        ArrayNode scenarios = root.putArray("scenarios");
        for (String name : Scenarios.names()) {
            Scenario scenario = Scenarios.find(name);
            Rig rig = scenario.belief();
            ObjectNode one = scenarios.addObject();
            one.put("id", name);
            one.put("title", scenario.title());
            one.put("notes", scenario.notes());
            one.put("seconds", scenario.seconds());
            one.put("seed", scenario.seed());
            one.put("outlet", rig.outlet().id());
            one.put("product", rig.liquid().id());
            one.set("height_m", Json.number(rig.target().heightM(), 3));
            one.set("rate_Lpha", Json.number(rig.target().rateM() / TradeUnits.LPHA_M, 1));
            one.set("speed_mps", Json.number(scenario.world().drive().startMps(), 3));
            one.set("width_m", Json.number(rig.boom().widthM(), 2));
            one.put("outlets", rig.boom().outlets());
            ObjectNode places = one.putObject("places");
            list(
                    places,
                    PlaceKind.SECTION,
                    rig.boom().sections().stream().map(BoomLayout.Section::name).toList());
            list(
                    places,
                    PlaceKind.HEIGHT_SENSOR,
                    rig.sensors().heights().stream().map(Rig.Height::name).toList());
            list(
                    places,
                    PlaceKind.PORT,
                    rig.ports().stream().map(Rig.Port::name).toList());
            list(places, PlaceKind.WING, List.of("left", "right"));
            list(places, PlaceKind.WHEEL, List.of("front-left", "front-right", "rear-left", "rear-right"));
        }
        ArrayNode outlets = root.putArray("outlets");
        for (String id : OutletCatalogue.ids()) {
            outlets.addObject()
                    .put("id", id)
                    .put("title", OutletCatalogue.find(id, Path.of("")).title());
        }
        ArrayNode products = root.putArray("products");
        for (Liquid liquid : Liquids.all()) {
            products.addObject().put("id", liquid.id()).put("title", liquid.title());
        }
        ArrayNode faults = root.putArray("faults");
        for (Fault fault : Faults.all()) {
            ObjectNode one = faults.addObject();
            one.put("id", fault.id());
            one.put("notice", fault.notice());
            one.put("place", word(fault.place()));
            one.put("places", fault.place().words());
            one.put("how_much", fault.amount().words());
            one.put("unit", fault.amount().unit());
            if (fault.amount().isGiven()) {
                one.put("usual", fault.amount().usual());
            }
        }
        return root;
    }

    private static void list(ObjectNode places, PlaceKind kind, List<String> names) {
        ArrayNode array = places.putArray(word(kind));
        names.forEach(array::add);
    }

    private static String word(PlaceKind kind) {
        return kind.name().toLowerCase(Locale.ROOT);
    }
}
