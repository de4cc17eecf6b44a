package evenfall.rig;

import evenfall.config.ConfigException;
import evenfall.config.ConfigFile;
import evenfall.config.ConfigNode;
import evenfall.config.ConfigSchema;
import evenfall.liquid.Liquid;
import evenfall.liquid.Liquids;
import evenfall.outlet.OutletCatalogue;
import evenfall.outlet.OutletDesign;
import evenfall.outlet.OutletType;
import evenfall.quantity.FixedDecimals;
import evenfall.quantity.TradeUnits;
import evenfall.quantity.Units;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Reads a rig file (YAML, {@code rig.schema.json}) and checks what a schema cannot. */
public final class RigFile {
    private static final List<String> LOOPBACK = List.of("127.0.0.1", "localhost", "::1");
    private static final ConfigSchema SCHEMA = ConfigSchema.resource(RigFile.class, "rig.schema.json");

    private final ConfigNode root;
    private final Path folder;

    private RigFile(ConfigNode root, Path folder) {
        this.root = root;
        this.folder = folder;
    }

    /**
     * @throws ConfigException with file, line, what is wrong and what is allowed
     */
    public static Rig read(Path file) throws ConfigException {
        Path folder = file.toAbsolutePath().getParent();
        return new RigFile(ConfigFile.read(file, SCHEMA).root(), folder == null ? Path.of(".") : folder).rig();
    }

    /**
     * @param name what to call the text in complaints
     * @param folder where relative outlet files start from
     */
    public static Rig parse(String name, String text, Path folder) throws ConfigException {
        return new RigFile(ConfigFile.parse(name, text, SCHEMA).root(), folder).rig();
    }

    private Rig rig() throws ConfigException {
        BoomLayout boom = boom(root.at("boom"));
        List<Rig.Port> ports = ports();
        return new Rig(
                root.text("name"),
                boom,
                outlet(root.at("outlets"), boom.spacingM()),
                liquid(root.at("product")),
                target(root.at("target")),
                sensors(root.at("sensors"), boom, ports),
                limits(),
                ports,
                broker(),
                page(),
                ledger(),
                root.text("units", "metric").equals("us") ? Units.US : Units.METRIC);
    }

    private static BoomLayout boom(ConfigNode node) throws ConfigException {
        int outlets = node.integer("outlets");
        double spacingM = node.number("spacing_m");
        double rowM = node.number("row_m");
        double widthM = outlets * spacingM;
        double hingeM = node.number("hinge_m");
        if (hingeM >= 0.5 * widthM) {
            throw node.wrong(
                    "hinge_m",
                    "lies outside the boom, which is " + metres(widthM) + " m wide",
                    "less than half the width: the wings begin there");
        }
        List<BoomLayout.Section> sections = new ArrayList<>();
        int first = 0;
        for (double count : node.numbers("sections")) {
            sections.add(new BoomLayout.Section(Integer.toString(sections.size() + 1), first, (int) count));
            first += (int) count;
        }
        if (first != outlets) {
            throw node.wrong(
                    "sections", "hold " + first + " outlets together", "numbers that add up to outlets: " + outlets);
        }
        return new BoomLayout(outlets, spacingM, rowM, node.number("row_phase", 0.5), hingeM, sections);
    }

    private OutletType outlet(ConfigNode node, double spacingM) throws ConfigException {
        OutletDesign design;
        if (node.has("file")) {
            design = OutletDesign.read(folder.resolve(node.text("file")));
        } else if (OutletCatalogue.ids().contains(node.text("type", ""))) {
            design = OutletCatalogue.builtIn(node.text("type"));
        } else {
            throw node.wrong(
                    "type",
                    "there is no outlet type " + node.text("type", "given"),
                    String.join(", ", OutletCatalogue.ids()) + ", or file: with the path of an outlet file");
        }
        OutletType type = design.fitted(spacingM);
        return node.has("rated_flow_Lpm")
                ? type.withRatedFlow(node.number("rated_flow_Lpm") * TradeUnits.LPM_M3PS)
                : type;
    }

    private static Liquid liquid(ConfigNode node) throws ConfigException {
        Liquid liquid = known(node, "liquid");
        if (node.has("with")) {
            ConfigNode with = node.at("with");
            liquid = liquid.blendedWith(known(with, "liquid"), with.number("share"));
        }
        return node.has("density_kgpL") ? liquid.withDensity(node.number("density_kgpL") * 1000) : liquid;
    }

    private static Liquid known(ConfigNode node, String key) throws ConfigException {
        return Liquids.byId(node.text(key))
                .orElseThrow(() -> node.wrong(
                        key,
                        "there is no product " + node.text(key),
                        Liquids.all().stream().map(Liquid::id).collect(Collectors.joining(", "))));
    }

    private static Rig.Target target(ConfigNode node) {
        return new Rig.Target(node.number("rate_Lpha") * TradeUnits.LPHA_M, node.number("height_m"));
    }

    private List<Rig.Port> ports() throws ConfigException {
        List<Rig.Port> ports = new ArrayList<>();
        for (ConfigNode node : root.list("ports")) {
            String name = node.text("name");
            if (ports.stream().anyMatch(p -> p.name().equals(name))) {
                throw node.wrong("name", "there are two ports called " + name, "a name of its own for each port");
            }
            if (name.equals(Rig.CAB_PORT)) {
                throw node.wrong("name", "cab is the name of the cab view among the inputs", "any other name");
            }
            ports.add(new Rig.Port(name, node.text("device"), node.integer("baud", 115_200)));
        }
        return ports;
    }

    private static Rig.Sensors sensors(ConfigNode node, BoomLayout boom, List<Rig.Port> ports) throws ConfigException {
        Optional<Rig.Flow> flow = Optional.empty();
        if (node.has("flow")) {
            ConfigNode at = node.at("flow");
            flow = Optional.of(new Rig.Flow(port(at, "port", ports), at.number("pulses_per_L") / TradeUnits.LITRE_M3));
        }
        Optional<Rig.Pressure> pressure = Optional.empty();
        if (node.has("pressure")) {
            pressure = Optional.of(pressure(node.at("pressure"), ports));
        }
        List<Rig.Height> heights = new ArrayList<>();
        Optional<String> heightsPort = Optional.empty();
        if (node.has("heights")) {
            ConfigNode group = node.at("heights");
            heightsPort = Optional.of(port(group, "port", ports));
            for (ConfigNode at : group.list("at")) {
                heights.add(height(at, boom, heights));
            }
        }
        Optional<Rig.Wheel> wheel = Optional.empty();
        if (node.has("wheel")) {
            ConfigNode at = node.at("wheel");
            wheel = Optional.of(new Rig.Wheel(port(at, "port", ports), at.number("pulses_per_m")));
        }
        return new Rig.Sensors(
                flow,
                pressure,
                heights,
                heightsPort,
                air(node, ports),
                portOf(node, "speed", ports),
                wheel,
                portOf(node, "sections", ports),
                node.has("tank") ? Optional.of(tank(node.at("tank"), ports)) : Optional.empty());
    }

    /**
     * Defaults. Noise 40 L: a few centimetres of sloshing in a tank of some square metres. Table known to 1.5 %: a dipstick on level
     * ground, or marks filled by a checked meter. Common practice, no source.
     */
    private static Rig.Tank tank(ConfigNode node, List<Rig.Port> ports) throws ConfigException {
        List<Rig.Tank.Mark> table = new ArrayList<>();
        for (ConfigNode at : node.list("table")) {
            Rig.Tank.Mark mark = new Rig.Tank.Mark(at.number("counts"), at.number("holds_L") * TradeUnits.LITRE_M3);
            int n = table.size();
            if (n > 0 && !(table.get(n - 1).counts() < mark.counts())) {
                throw at.wrong("counts", "are not above those of the mark before", "marks by ascending counts");
            }
            if (n > 0 && !goesOn(table, mark.volumeM3())) {
                throw at.wrong(
                        "holds_L",
                        "does not go on the way of the marks before",
                        "litres that all rise, or that all fall");
            }
            table.add(mark);
        }
        return new Rig.Tank(
                port(node, "port", ports),
                table,
                node.number("noise_L", 40) * TradeUnits.LITRE_M3,
                node.number("known_pct", 1.5) / 100);
    }

    private static boolean goesOn(List<Rig.Tank.Mark> table, double volumeM3) {
        double lastM3 = table.get(table.size() - 1).volumeM3();
        boolean rises =
                table.size() == 1 || table.get(1).volumeM3() > table.get(0).volumeM3();
        return table.size() == 1 ? volumeM3 != lastM3 : rises ? volumeM3 > lastM3 : volumeM3 < lastM3;
    }

    private static Rig.Pressure pressure(ConfigNode at, List<Rig.Port> ports) throws ConfigException {
        Rig.Pressure pressure = new Rig.Pressure(
                port(at, "port", ports),
                at.number("low_mA") / 1000,
                at.number("high_mA") / 1000,
                at.number("low_kPa") * TradeUnits.KPA_PA,
                at.number("high_kPa") * TradeUnits.KPA_PA);
        if (!(pressure.lowA() < pressure.highA())) {
            throw at.wrong("high_mA", "is not above low_mA", "a high point above the low point");
        }
        if (!(pressure.lowPa() < pressure.highPa())) {
            throw at.wrong("high_kPa", "is not above low_kPa", "a high point above the low point");
        }
        return pressure;
    }

    private static Rig.Height height(ConfigNode at, BoomLayout boom, List<Rig.Height> before) throws ConfigException {
        Rig.Height height = new Rig.Height(at.text("name"), at.number("right_m"), at.number("above_outlet_m", 0));
        if (Math.abs(height.rightM()) > 0.5 * boom.widthM()) {
            throw at.wrong(
                    "right_m",
                    "lies outside the boom",
                    "from " + metres(-0.5 * boom.widthM()) + " to " + metres(0.5 * boom.widthM()) + " m");
        }
        for (Rig.Height other : before) {
            if (other.name().equals(height.name())) {
                throw at.wrong("name", "there are two height sensors called " + other.name(), "a name of its own");
            }
            if (other.rightM() >= height.rightM()) {
                throw at.wrong("right_m", "is not right of the sensor before it", "sensors from left to right");
            }
        }
        return height;
    }

    private static String metres(double lengthM) {
        return FixedDecimals.text(lengthM, 3);
    }

    private static Rig.Air air(ConfigNode node, List<Rig.Port> ports) throws ConfigException {
        if (!node.has("air")) {
            return new Rig.Air(Optional.empty(), 10);
        }
        return new Rig.Air(portOf(node, "air", ports), node.at("air").number("fixed_C", 10));
    }

    private static Optional<String> portOf(ConfigNode sensors, String group, List<Rig.Port> ports)
            throws ConfigException {
        if (!sensors.has(group) || !sensors.at(group).has("port")) {
            return Optional.empty();
        }
        return Optional.of(port(sensors.at(group), "port", ports));
    }

    private static String port(ConfigNode node, String key, List<Rig.Port> ports) throws ConfigException {
        String name = node.text(key);
        if (ports.stream().noneMatch(p -> p.name().equals(name))) {
            throw node.wrong(
                    key,
                    "there is no port called " + name,
                    ports.stream().map(Rig.Port::name).collect(Collectors.joining(", ")));
        }
        return name;
    }

    /**
     * Defaults. Rate 10 %: what field tests of sprayers allow, from memory (EN 12761, ISO 16119); advisers act from 5 % on.
     * Row CV 15 %: acceptable for spreading fertiliser (Teagasc, as reported by Agriland). Hold 1 s and 5 m: our choice, about
     * two machine lengths of ground that somebody could still see. Walking pace 0.5 m/s: our choice. Silence 1 s: twenty
     * missed height sentences, our choice. Strike 0.9 s: what a boom takes from its set height to the ground when it swings at
     * about half a hertz, our choice; farther ahead a forecast of a boom's swing says no more than that it swings. Section 2 s:
     * motor valves turn in a second or less, and lines fill and drain; common practice, no source.
     */
    private Rig.Limits limits() throws ConfigException {
        if (!root.has("limits")) {
            return new Rig.Limits(0.10, 0.15, 0.15, 1.2, 1, 5, 0.5, 1, 0.9, 2);
        }
        ConfigNode node = root.at("limits");
        Rig.Limits limits = new Rig.Limits(
                node.number("rate_error_pct", 10) / 100,
                node.number("row_cv_pct", 15) / 100,
                node.number("clearance_m", 0.15),
                node.number("ceiling_m", 1.2),
                node.number("hold_s", 1),
                node.number("hold_m", 5),
                node.number("walking_mps", 0.5),
                node.number("silence_s", 1),
                node.number("strike_s", 0.9),
                node.number("section_s", 2));
        if (!(limits.clearanceM() < limits.ceilingM())) {
            throw node.wrong("ceiling_m", "is not above clearance_m", "a ceiling above the clearance");
        }
        double targetM = root.at("target").number("height_m");
        if (!(limits.clearanceM() < targetM && targetM < limits.ceilingM())) {
            throw root.at("target")
                    .wrong(
                            "height_m",
                            "lies outside clearance_m and ceiling_m of the limits",
                            "a height between " + metres(limits.clearanceM()) + " and " + metres(limits.ceilingM())
                                    + " m");
        }
        return limits;
    }

    private Optional<Rig.Page> page() throws ConfigException {
        if (!root.has("page")) {
            return Optional.empty();
        }
        ConfigNode node = root.at("page");
        String host = node.text("host", "127.0.0.1");
        Optional<String> token = node.has("token") ? Optional.of(node.text("token")) : Optional.empty();
        if (token.isEmpty() && !LOOPBACK.contains(host)) {
            throw node.wrong(
                    "host",
                    "is seen from beyond this machine, and there is no token",
                    "a token of 12 or more letters and digits beside it, or one of " + String.join(", ", LOOPBACK));
        }
        return Optional.of(new Rig.Page(host, node.integer("port", 8036), token));
    }

    private Rig.Ledger ledger() {
        if (!root.has("ledger")) {
            return Rig.Ledger.USUAL;
        }
        ConfigNode node = root.at("ledger");
        Rig.Ledger usual = Rig.Ledger.USUAL;
        return new Rig.Ledger(
                node.number("cell_m", usual.cellM()),
                Rig.FixGrade.valueOf(node.text("overlap_from", "differential").toUpperCase(Locale.ROOT)),
                node.number("antenna_ahead_m", usual.antennaAheadM()),
                node.number("antenna_right_m", usual.antennaRightM()),
                factor(node, "product_factor"),
                factor(node, "weather_factor"));
    }

    private static OptionalDouble factor(ConfigNode node, String key) {
        return node.has(key) ? OptionalDouble.of(node.number(key)) : OptionalDouble.empty();
    }

    private Rig.Broker broker() {
        if (!root.has("broker")) {
            return new Rig.Broker("127.0.0.1", 1883);
        }
        ConfigNode node = root.at("broker");
        return new Rig.Broker(node.text("host", "127.0.0.1"), node.integer("port", 1883));
    }
}
