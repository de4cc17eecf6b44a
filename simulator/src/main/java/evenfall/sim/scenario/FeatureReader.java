package evenfall.sim.scenario;

import evenfall.config.ConfigException;
import evenfall.config.ConfigNode;
import evenfall.sim.ground.Crossing;
import evenfall.sim.ground.DeadFurrow;
import evenfall.sim.ground.Dip;
import evenfall.sim.ground.Feature;
import evenfall.sim.ground.HeadlandBank;
import evenfall.sim.ground.Knoll;
import evenfall.sim.ground.Rise;
import evenfall.sim.ground.Ruts;
import evenfall.sim.ground.SideSlope;
import evenfall.sim.ground.Terrace;
import evenfall.sim.ground.Washout;
import java.util.ArrayList;
import java.util.List;

/** Reads the features of the ground. */
final class FeatureReader {
    /** Over what length a feature that ends fades away where the file does not say, m; a choice of ours. */
    private static final double USUAL_FADE_M = 5;

    private static final List<String> KINDS =
            List.of("terrace", "knoll", "dip", "rise", "dead_furrow", "washout", "headland_bank", "side_slope", "ruts");

    private FeatureReader() {}

    static List<Feature> read(ConfigNode ground) throws ConfigException {
        List<Feature> features = new ArrayList<>();
        for (ConfigNode entry : ground.list("features")) {
            for (String kind : KINDS) {
                if (entry.has(kind)) {
                    features.add(feature(entry, kind));
                }
            }
        }
        return features;
    }

    private static Feature feature(ConfigNode entry, String kind) throws ConfigException {
        try {
            return feature(kind, entry.at(kind));
        } catch (IllegalArgumentException e) {
            throw entry.wrong(kind, String.valueOf(e.getMessage()), "a feature that can exist");
        }
    }

    private static Feature feature(String kind, ConfigNode at) {
        return switch (kind) {
            case "terrace" -> terrace(at);
            case "knoll" ->
                new Knoll(at.number("at_m"), at.number("right_m", 0), at.number("radius_m"), at.number("top_m"));
            case "dip" -> new Dip(crossing(at), at.number("depth_m"), at.number("length_m"));
            case "rise" -> new Rise(crossing(at), at.number("height_m"), at.number("length_m"));
            case "dead_furrow" ->
                new DeadFurrow(crossing(at), at.number("depth_m"), at.number("width_m"), at.number("shoulder_m", 0));
            case "washout" ->
                new Washout(crossing(at), at.number("depth_m"), at.number("bottom_m"), at.number("bank_m"));
            case "headland_bank" ->
                new HeadlandBank(crossing(at), at.number("height_m"), at.number("slope_m"), at.number("crest_m", 0));
            case "side_slope" ->
                new SideSlope(
                        at.number("right_mpm"),
                        at.number("from_m", Double.NEGATIVE_INFINITY),
                        at.number("run_in_m", 1));
            case "ruts" ->
                new Ruts(
                        at.number("from_m"),
                        at.number("to_m"),
                        at.number("fade_m", USUAL_FADE_M),
                        at.number("right_m", 0),
                        at.number("gauge_m"),
                        at.number("width_m"),
                        at.number("left_depth_m"),
                        at.number("right_depth_m"));
            default -> throw new IllegalStateException("the schema lets through a feature of kind " + kind);
        };
    }

    private static Terrace terrace(ConfigNode at) {
        Terrace usual = Terrace.broadBase(crossing(at));
        return new Terrace(
                usual.crossing(),
                at.number("ridge_m", usual.ridgeM()),
                at.number("channel_m", usual.channelM()),
                at.number("back_slope_m", usual.backSlopeM()),
                at.number("front_slope_m", usual.frontSlopeM()),
                at.number("cut_slope_m", usual.cutSlopeM()));
    }

    private static Crossing crossing(ConfigNode at) {
        Crossing whole = Crossing.at(at.number("at_m"), StrictMath.toRadians(at.number("skew_deg", 0)));
        if (!at.has("stretch")) {
            return whole;
        }
        ConfigNode stretch = at.at("stretch");
        return whole.between(stretch.number("from_m"), stretch.number("to_m"), stretch.number("fade_m", USUAL_FADE_M));
    }
}
