package evenfall.outlet;

import evenfall.config.ConfigException;
import evenfall.config.ConfigFile;
import evenfall.config.ConfigNode;
import evenfall.config.ConfigSchema;
import evenfall.quantity.TradeUnits;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An outlet file: either plain numbers, or an intent ("this stream lands two thirds of the spacing to the right") whose
 * angles are solved when the spacing is known.
 */
public final class OutletDesign {
    private static final ConfigSchema SCHEMA = ConfigSchema.resource(OutletDesign.class, "outlet.schema.json");

    private record Aim(
            double share,
            double offsetM,
            double offsetSpacings,
            double splayRad,
            @Nullable Double landsSpacings,
            double tiltRad,
            double exitMps) {}

    private final String id;
    private final String title;
    private final boolean bar;
    private final int meteringSizes;
    private final double ratedPressurePa;
    private final double ratedFlowM3ps;
    private final double lowPa;
    private final double highPa;
    private final double designHeightM;
    private final double designSpeedFactor;
    private final List<Aim> aims;

    private OutletDesign(ConfigNode root) throws ConfigException {
        id = root.text("id");
        title = root.text("title");
        bar = root.text("form", "nozzle").equals("bar");
        meteringSizes = root.integer("metering_sizes", 1);
        ConfigNode rated = root.at("rated");
        ratedPressurePa = rated.number("pressure_kPa") * TradeUnits.KPA_PA;
        ratedFlowM3ps = rated.number("flow_Lpm") * TradeUnits.LPM_M3PS;
        ConfigNode window = root.at("window");
        lowPa = window.number("low_kPa") * TradeUnits.KPA_PA;
        highPa = window.number("high_kPa") * TradeUnits.KPA_PA;
        if (!(lowPa < highPa)) {
            throw window.wrong("high_kPa", "is not above low_kPa", "a window whose high end is above its low end");
        }
        boolean designed = root.has("design");
        designHeightM = designed ? root.at("design").number("height_m") : 0;
        designSpeedFactor = designed
                ? Math.sqrt(root.at("design").number("pressure_kPa")
                        * TradeUnits.KPA_PA
                        / (ratedPressurePa * root.at("design").number("sg")))
                : 0;
        aims = new ArrayList<>();
        double total = 0;
        for (ConfigNode stream : root.list("streams")) {
            total += stream.number("share");
        }
        for (ConfigNode stream : root.list("streams")) {
            aims.add(aim(stream, total, designed));
        }
    }

    private static Aim aim(ConfigNode stream, double totalShare, boolean designed) throws ConfigException {
        boolean aimed = stream.has("lands_spacings");
        if (aimed == stream.has("splay_deg")) {
            throw stream.wrong(
                    "splay_deg",
                    aimed ? "stands beside lands_spacings" : "is missing",
                    "either splay_deg or lands_spacings for each stream");
        }
        if (aimed && !designed) {
            throw stream.wrong(
                    "lands_spacings", "needs a design point", "a design group with height_m, pressure_kPa and sg");
        }
        return new Aim(
                stream.number("share") / totalShare,
                stream.number("offset_m", 0),
                stream.number("offset_spacings", 0),
                StrictMath.toRadians(stream.number("splay_deg", 0)),
                aimed ? stream.number("lands_spacings") : null,
                StrictMath.toRadians(stream.number("tilt_deg")),
                stream.number("exit_mps"));
    }

    /**
     * Reads a user's file.
     *
     * @throws ConfigException when the file is wrong, or takes the id of a built-in type: results carry the id only, and nobody
     *     could tell the two apart afterwards
     */
    public static OutletDesign read(Path file) throws ConfigException {
        ConfigNode root = ConfigFile.read(file, SCHEMA).root();
        if (OutletCatalogue.ids().contains(root.text("id"))) {
            throw root.wrong("id", root.text("id") + " is a built-in type", "an id of its own for each outlet");
        }
        return new OutletDesign(root);
    }

    static OutletDesign parse(String name, String text) throws ConfigException {
        return new OutletDesign(ConfigFile.parse(name, text, SCHEMA).root());
    }

    /** Name in files and results. */
    public String id() {
        return id;
    }

    /** Name for people. */
    public String title() {
        return title;
    }

    /** Whether it is a bar, which hangs across the boom and is handled otherwise than a nozzle. */
    public boolean isBar() {
        return bar;
    }

    /** How many metering sizes one outlet carries, turned or opened by hand; 1 where each size is an outlet of its own. */
    public int meteringSizes() {
        return meteringSizes;
    }

    /**
     * The outlet with every angle solved for a boom on which outlets are so far apart.
     *
     * @param spacingM distance between outlets, m, above 0
     */
    public OutletType fitted(double spacingM) {
        List<Stream> streams = new ArrayList<>();
        for (Aim aim : aims) {
            double offsetM = aim.offsetM + aim.offsetSpacings * spacingM;
            double splayRad = aim.landsSpacings == null
                    ? aim.splayRad
                    : SplayAngle.landingAt(
                            aim.landsSpacings * spacingM - offsetM,
                            designHeightM,
                            aim.exitMps * designSpeedFactor,
                            aim.tiltRad);
            streams.add(new Stream(aim.share, offsetM, splayRad, aim.tiltRad, aim.exitMps));
        }
        return new OutletType(id, title, ratedPressurePa, ratedFlowM3ps, lowPa, highPa, streams);
    }
}
