package evenfall.bench.prove.guide;

import evenfall.bench.prove.measure.AmountDoubt;
import evenfall.bench.prove.measure.Buoyancy;
import java.util.List;

/**
 * What a catch is measured with.
 *
 * @param scale whether it is a scale; else a measuring jug
 * @param halfWidth how far off it may be, kg or m³
 * @param step its smallest step, kg or m³
 * @param densityKgpM3 of the liquid; 1 with a jug, which needs none
 * @param densityHalfWidthKgpM3 how far off that may be
 */
record Vessel(boolean scale, double halfWidth, double step, double densityKgpM3, double densityHalfWidthKgpM3) {

    static Vessel ask(Dialogue dialogue, Setup setup) throws Turn {
        boolean scale = dialogue.choice("measured_by", "How is a catch measured?", List.of("scale", "jug"), "scale")
                .equals("scale");
        String tool = scale ? "scale" : "jug";
        Kind kind = scale ? Kind.MASS : Kind.VOLUME;
        double most = scale ? 100 : 0.1;
        double halfWidth = dialogue.amount(
                "accuracy", "How far off may the " + tool + " be, either way (its papers say)?", kind, null, 0, most);
        double step = dialogue.amount(
                "step", "Smallest step that you can read on the " + tool, kind, null, scale ? 1e-6 : 1e-9, most);
        if (!scale) {
            return new Vessel(false, halfWidth, step, 1, 0);
        }
        String usual = setup.rig()
                .map(rig -> Dialogue.plain(rig.liquid().densityKgpM3() / 1000) + " kg/L")
                .orElse(null);
        double density = dialogue.amount(
                "density", "Density of the liquid as it is now, by a hydrometer", Kind.DENSITY, usual, 700, 1800);
        double densityHalfWidth = dialogue.amount(
                "density_accuracy", "How far off may that density be, either way?", Kind.DENSITY, "0.005 kg/L", 0, 100);
        return new Vessel(true, halfWidth, step, density, densityHalfWidth);
    }

    Kind kind() {
        return scale ? Kind.MASS : Kind.VOLUME;
    }

    /** Volume of what a reading shows, m³. */
    double volumeM3(double reading) {
        return scale ? Buoyancy.volumeM3(reading, densityKgpM3) : reading;
    }

    AmountDoubt doubt() {
        return new AmountDoubt(
                halfWidth / densityKgpM3,
                scale ? densityHalfWidthKgpM3 / densityKgpM3 : 0,
                step / densityKgpM3,
                1,
                scale ? "scale" : "jug",
                "density");
    }

    /** A full reading that is no more than the empty one. */
    static Refusal notTared(String full, String net) {
        return new Refusal(
                "a catch of " + net + " cannot be; " + full,
                "the reading of the full vessel, above that of the empty one, on a scale that was tared or not, but"
                        + " the same way for both");
    }

    /** A number of kg or m³ for people. */
    String words(double reading) {
        return scale ? Dialogue.plain(reading) + " kg" : Dialogue.plain(reading * 1000) + " L";
    }

    String method() {
        return scale
                ? "Catches weighed; volume = reading · (1 − 1.2/8000) / (1 − 1.2/density) / density, for the buoyancy of air"
                        + " (OIML D 28, from memory)."
                : "Catches measured in a jug.";
    }
}
