package evenfall.sim.scenario;

import evenfall.config.ConfigException;
import evenfall.config.ConfigNode;
import evenfall.liquid.Liquid;
import evenfall.liquid.Liquids;
import evenfall.outlet.OutletCatalogue;
import evenfall.outlet.OutletDesign;
import evenfall.outlet.OutletType;
import evenfall.quantity.TradeUnits;
import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import evenfall.sim.sensor.PressureTransmitter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Works out what is really fitted: what the file gives, and what it says to be as the installer believes. */
final class FittedReader {
    private static final List<String> GIVEN = List.of(
            "outlet_type",
            "rated_flow_Lpm",
            "density_kgpL",
            "spacing_m",
            "row_m",
            "row_phase",
            "pulses_per_L",
            "above_outlet_m");

    private final ConfigNode world;
    private final Rig belief;
    private final Path folder;

    FittedReader(ConfigNode world, Rig belief, Path folder) {
        this.world = world;
        this.belief = belief;
        this.folder = folder;
    }

    /**
     * @param outletOverride type to take in place of all that the file says; its metering size stays
     */
    FittedSpec read(Optional<OutletDesign> outletOverride) throws ConfigException {
        requireAllWhereGiven();
        ConfigNode sensors = group(world, "sensors");
        BoomLayout boom = boom();
        return new FittedSpec(
                boom,
                outlet(outletOverride),
                liquid(),
                pulses(),
                heights(),
                pressure(sensors),
                belief.sensors().air().port().isPresent(),
                belief.sensors().sectionsPort().isPresent(),
                belief.sensors().speedPort().isPresent());
    }

    private void requireAllWhereGiven() throws ConfigException {
        if (!world.text("installed").equals("as-given")) {
            return;
        }
        for (String key : GIVEN) {
            boolean needless =
                    key.equals("pulses_per_L") && belief.sensors().flow().isEmpty();
            if (!needless && !has(key)) {
                ConfigNode place = world.has("fitted") ? given() : world;
                throw place.wrong(
                        world.has("fitted") ? key : "fitted",
                        "does not say " + key,
                        "all of " + String.join(", ", GIVEN) + ", or installed: as-believed");
            }
        }
    }

    private boolean has(String key) {
        return world.has("fitted") && given().has(key);
    }

    private ConfigNode given() {
        return world.at("fitted");
    }

    /** A group that may be absent: then the place around it, in which none of its keys is found. */
    private static ConfigNode group(ConfigNode node, String key) {
        return node.has(key) ? node.at(key) : node;
    }

    private BoomLayout boom() {
        BoomLayout believed = belief.boom();
        return new BoomLayout(
                believed.outlets(),
                has("spacing_m") ? given().number("spacing_m") : believed.spacingM(),
                has("row_m") ? given().number("row_m") : believed.rowM(),
                has("row_phase") ? given().number("row_phase") : believed.rowPhase(),
                believed.hingeM(),
                believed.sections());
    }

    private OutletType outlet(Optional<OutletDesign> override) throws ConfigException {
        double flowM3ps = has("rated_flow_Lpm")
                ? given().number("rated_flow_Lpm") * TradeUnits.LPM_M3PS
                : belief.outlet().ratedFlowM3ps();
        if (override.isPresent()) {
            return override.get().fitted(belief.boom().spacingM()).withRatedFlow(flowM3ps);
        }
        // Holes are drilled for the spacing that the outlets were bought for, the believed one.
        if (!has("outlet_type")) {
            return belief.outlet().withRatedFlow(flowM3ps);
        }
        try {
            return OutletCatalogue.find(given().text("outlet_type"), folder)
                    .fitted(belief.boom().spacingM())
                    .withRatedFlow(flowM3ps);
        } catch (ConfigException e) {
            throw given().wrong(
                            "outlet_type",
                            "there is no outlet type " + given().text("outlet_type"),
                            String.join(", ", OutletCatalogue.ids()) + ", or an outlet file");
        }
    }

    private Liquid liquid() throws ConfigException {
        Liquid liquid = belief.liquid();
        if (has("liquid")) {
            String id = given().text("liquid");
            liquid = Liquids.byId(id)
                    .orElseThrow(() -> given().wrong(
                                    "liquid",
                                    "there is no product " + id,
                                    Liquids.all().stream().map(Liquid::id).collect(Collectors.joining(", "))));
        }
        return has("density_kgpL") ? liquid.withDensity(given().number("density_kgpL") * 1000) : liquid;
    }

    private OptionalDouble pulses() {
        if (belief.sensors().flow().isEmpty()) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(
                has("pulses_per_L")
                        ? given().number("pulses_per_L") / TradeUnits.LITRE_M3
                        : belief.sensors().flow().get().pulsesPerM3());
    }

    private List<FittedSpec.Height> heights() throws ConfigException {
        List<Rig.Height> believed = belief.sensors().heights();
        double[] above = has("above_outlet_m") ? given().numbers("above_outlet_m") : null;
        if (above != null && above.length != believed.size()) {
            throw given().wrong(
                            "above_outlet_m",
                            "holds " + above.length + " numbers",
                            "one for each of the rig's " + believed.size() + " height sensors");
        }
        List<FittedSpec.Height> heights = new ArrayList<>();
        for (int i = 0; i < believed.size(); i++) {
            Rig.Height at = believed.get(i);
            heights.add(new FittedSpec.Height(at.name(), at.rightM(), above == null ? at.aboveOutletM() : above[i]));
        }
        return heights;
    }

    private Optional<PressureTransmitter.Spec> pressure(ConfigNode sensors) {
        ConfigNode errors = group(sensors, "pressure");
        return belief.sensors()
                .pressure()
                .map(p -> new PressureTransmitter.Spec(
                        p.lowA(),
                        p.highA(),
                        p.lowPa(),
                        p.highPa(),
                        errors.number("offset_kPa", 0) * TradeUnits.KPA_PA,
                        errors.number("noise_kPa", 0.8) * TradeUnits.KPA_PA));
    }
}
