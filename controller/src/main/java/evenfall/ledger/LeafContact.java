package evenfall.ledger;

import java.util.OptionalDouble;

/**
 * How much width of leaf the streams wet, relative; always with its caveat.
 *
 * @param wettedShare wetted width on a metre of boom, m/m, by the geometry of the streams alone
 * @param relative the same over what these outlets wet at the target height and their rated pressure: 1 is as much
 * @param productFactor the farm's own judgement of the product; empty where none is given, and then it counts as 1
 * @param weatherFactor the farm's own judgement of the weather; empty where none is given, and then it counts as 1
 */
public record LeafContact(
        double wettedShare, double relative, OptionalDouble productFactor, OptionalDouble weatherFactor) {
    /** Goes wherever the number goes. */
    public static final String CAVEAT =
            "Relative, from the geometry of the streams. It predicts neither leaf burn nor yield: those depend on far more.";

    /** Geometry times both factors. */
    public double index() {
        return relative * productFactor.orElse(1) * weatherFactor.orElse(1);
    }
}
