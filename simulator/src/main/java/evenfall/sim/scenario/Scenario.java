package evenfall.sim.scenario;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.config.ConfigException;
import evenfall.config.ConfigFile;
import evenfall.config.ConfigNode;
import evenfall.config.ConfigSchema;
import evenfall.liquid.Liquid;
import evenfall.liquid.Liquids;
import evenfall.outlet.OutletCatalogue;
import evenfall.outlet.OutletDesign;
import evenfall.quantity.FixedDecimals;
import evenfall.quantity.TradeUnits;
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.regex.Pattern;

/** A scenario that has been read and checked: the world, the installer's belief, and how long and with which seed to run. */
public final class Scenario {
    private static final ConfigSchema SCHEMA = ConfigSchema.resource(Scenario.class, "scenario.schema.json");
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private static final Pattern RIG_LINE = Pattern.compile("rig:\\s*(#.*)?");

    private final String name;
    private final Path folder;
    private final ConfigNode root;
    private final long seed;
    private final Optional<String> outletOverride;
    private final WorldSpec world;
    private final Rig belief;

    private Scenario(String name, Path folder, ConfigNode root, Rig written, long seed, Optional<String> outletOverride)
            throws ConfigException {
        this.name = name;
        this.folder = folder;
        this.root = root;
        this.seed = seed;
        this.outletOverride = outletOverride;
        Optional<OutletDesign> design =
                outletOverride.isPresent() ? Optional.of(design(outletOverride.get())) : Optional.empty();
        this.belief = design.isPresent() ? refitted(written, design.get()) : written;
        this.world = new WorldReader(root.at("world"), belief, folder).read(design);
    }

    /**
     * @param name what people call it; also its name in complaints
     * @param text the whole file
     * @param folder where relative outlet files start from
     */
    static Scenario parse(String name, String file, String text, Path folder) throws ConfigException {
        ConfigNode root = ConfigFile.parse(file, text, SCHEMA).root();
        Rig belief = RigFile.parse(file, rigLines(text, root), folder);
        return new Scenario(name, folder, root, belief, root.wide("seed"), Optional.empty());
    }

    /** The rig's own lines with all others blanked out, so that its reader's complaints name the lines of this file. */
    private static String rigLines(String text, ConfigNode root) {
        StringBuilder out = new StringBuilder(text.length());
        boolean inside = false;
        boolean found = false;
        for (String line : text.split("\r?\n", -1)) {
            if (!line.isEmpty() && line.charAt(0) != ' ' && line.charAt(0) != '#') {
                inside = RIG_LINE.matcher(line).matches();
                found |= inside;
            } else if (inside) {
                out.append(line);
            }
            out.append('\n');
        }
        return found ? out.toString() : root.at("rig").toJson();
    }

    private static OutletDesign design(String idOrFile) throws ConfigException {
        return OutletCatalogue.find(idOrFile, Path.of(""));
    }

    private static Rig refitted(Rig rig, OutletDesign design) {
        return rig.withOutlet(
                design.fitted(rig.boom().spacingM()).withRatedFlow(rig.outlet().ratedFlowM3ps()));
    }

    /** The same scenario with another seed. */
    public Scenario withSeed(long other) throws ConfigException {
        return new Scenario(name, folder, root, belief, other, outletOverride);
    }

    /** The same scenario, with a monitor whose alerts speak in other units. */
    public Scenario withUnits(Units units) throws ConfigException {
        return new Scenario(name, folder, root, belief.withUnits(units), seed, outletOverride);
    }

    /**
     * The same scenario with other outlets, in the world and in the belief; their metering size stays, taken at the type's own rated
     * pressure.
     *
     * @param idOrFile id of a built-in type, or the path of an outlet file
     * @throws ConfigException when there is no such type
     */
    public Scenario withOutlet(String idOrFile) throws ConfigException {
        return new Scenario(name, folder, root, belief, seed, Optional.of(idOrFile));
    }

    /**
     * The same scenario with another height that the crew sets the boom to, and tells the monitor.
     *
     * @param heightM over what the streams shall meet, m
     * @throws ConfigException when a rig file could not say so
     */
    public Scenario withTargetHeight(double heightM) throws ConfigException {
        return changed(root -> {
            group(root, "rig", "target").put("height_m", heightM);
            group(root, "world", "machine").remove("boom_height_m");
        });
    }

    /**
     * The same scenario with another rate that machine and monitor are to keep.
     *
     * @param rateLpha L/ha
     * @throws ConfigException when a rig file could not say so
     */
    public Scenario withTargetRate(double rateLpha) throws ConfigException {
        return changed(root -> group(root, "rig", "target").put("rate_Lpha", rateLpha));
    }

    /**
     * The same scenario with another product, in the tank and in the belief.
     *
     * @param liquid id of a product
     * @throws ConfigException when there is no such product
     */
    public Scenario withProduct(String liquid) throws ConfigException {
        return changed(root -> {
            group(root, "rig").putObject("product").put("liquid", liquid);
            if (group(root, "world").path("fitted") instanceof ObjectNode fitted) {
                fitted.remove("liquid");
                // A machine that is given in full has to say what is in its tank; only the density is asked for.
                Optional<Liquid> known = Liquids.byId(liquid);
                if (fitted.has("density_kgpL") && known.isPresent()) {
                    fitted.put("density_kgpL", known.get().densityKgpM3() / 1000);
                }
            }
        });
    }

    /**
     * The same scenario, driven at another speed from a moment on and to the end; up to that moment it is the same drive.
     *
     * @param speedMps m/s
     * @param fromS the moment, s
     * @param fromM how far the machine has come then, m
     * @throws ConfigException when a scenario could not say so, or drives its turns at a speed of their own
     */
    public Scenario withSpeed(double speedMps, double fromS, double fromM) throws ConfigException {
        return changed(root -> {
            ObjectNode drive = group(root, "world", "drive");
            ArrayNode changes = JsonNodeFactory.instance.arrayNode();
            for (JsonNode change : drive.path("speeds")) {
                // Those still to come would take the speed back that has just been asked for.
                if (change.path("at_s").asDouble(0) <= fromS
                        && change.path("at_m").asDouble(0) <= fromM) {
                    changes.add(change);
                }
            }
            changes.addObject().put("at_s", fromS).put("speed_mps", speedMps);
            drive.set("speeds", changes);
        });
    }

    /**
     * The same scenario with one fault more.
     *
     * @param id its word
     * @param where its place as a scenario says it; empty where there is only one
     * @param howMuch its size; empty for the usual one
     * @param fromS the moment, s
     * @throws ConfigException when there is no such fault or place, or it cannot be of that size
     */
    public Scenario withFault(String id, Optional<String> where, OptionalDouble howMuch, double fromS)
            throws ConfigException {
        return changed(root -> {
            ObjectNode fault =
                    group(root, "world").withArrayProperty("faults").addObject().put("fault", id);
            where.ifPresent(place -> fault.put("where", place));
            howMuch.ifPresent(size -> fault.put("how_much", size));
            fault.put("at_s", fromS);
        });
    }

    /** Edits the tree that was read and reads the whole again, so that a change is held to the schema as a file is. */
    private Scenario changed(Consumer<ObjectNode> edit) throws ConfigException {
        ObjectNode tree;
        try {
            tree = (ObjectNode) MAPPER.readTree(root.toJson());
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a scenario that was read cannot be read again: " + e.getMessage(), e);
        }
        edit.accept(tree);
        ConfigNode edited = ConfigFile.parse(name, tree.toString(), SCHEMA).root();
        Rig rig = RigFile.parse(name, edited.at("rig").toJson(), folder).withUnits(belief.units());
        return new Scenario(name, folder, edited, rig, seed, outletOverride);
    }

    private static ObjectNode group(ObjectNode root, String... keys) {
        ObjectNode at = root;
        for (String key : keys) {
            at = (ObjectNode) at.get(key);
        }
        return at;
    }

    /** Name of a built-in scenario, or of its file. */
    public String name() {
        return name;
    }

    /** One line for people. */
    public String title() {
        return root.text("title");
    }

    /** What a trainer is to see. */
    public String notes() {
        return root.text("notes").strip();
    }

    public long seed() {
        return seed;
    }

    /** How long it runs, s. */
    public double seconds() {
        return root.number("seconds");
    }

    /** What is true. */
    public WorldSpec world() {
        return world;
    }

    /** What the installer believes: what the controller will read. */
    public Rig belief() {
        return belief;
    }

    /**
     * The rig file for the controller, from the belief alone; YAML (in the form of JSON, which YAML holds).
     *
     * @param deviceOfPort device for each port by name; a port that is not named keeps the device of the scenario
     * @param brokerHost where the broker is
     * @param brokerPort its TCP port
     * @param outletTypeOverride outlet type to write in place of the one that stands here ({@link #withOutlet} does it too)
     */
    public String rigYaml(
            Map<String, String> deviceOfPort, String brokerHost, int brokerPort, Optional<String> outletTypeOverride) {
        try {
            ObjectNode rig = (ObjectNode) MAPPER.readTree(root.at("rig").toJson());
            for (JsonNode port : rig.get("ports")) {
                String device = deviceOfPort.get(port.get("name").asText());
                if (device != null) {
                    ((ObjectNode) port).put("device", device);
                }
            }
            rig.put("units", belief.units() == Units.US ? "us" : "metric");
            rig.putObject("broker").put("host", brokerHost).put("port", brokerPort);
            Optional<String> type = outletTypeOverride.isPresent() ? outletTypeOverride : outletOverride;
            ObjectNode outlets = (ObjectNode) rig.get("outlets");
            if (type.isPresent()) {
                // Taken over as decimal text, so that 2.8 L/min stays 2.8 and does not grow digits of binary rounding.
                String flowLpm = FixedDecimals.text(belief.outlet().ratedFlowM3ps() / TradeUnits.LPM_M3PS, 6);
                outlets.removeAll();
                if (OutletCatalogue.ids().contains(type.get())) {
                    outlets.put("type", type.get());
                } else {
                    outlets.put("file", Path.of(type.get()).toAbsolutePath().toString());
                }
                outlets.put("rated_flow_Lpm", Double.parseDouble(flowLpm));
            } else if (outlets.has("file")) {
                outlets.put(
                        "file",
                        folder.resolve(outlets.get("file").asText())
                                .toAbsolutePath()
                                .toString());
            }
            return MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(rig) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a rig that was read cannot be written: " + e.getMessage(), e);
        }
    }
}
