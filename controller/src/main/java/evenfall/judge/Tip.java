package evenfall.judge;

/**
 * The end of a wing at one moment: its lowest outlet in the outer quarter. Looked at twenty times a second, and so without an object for
 * each number.
 *
 * @param isKnown whether its height is; the numbers count only where it is
 * @param heightM over what the sensors see, m
 * @param rateMps how fast that height grows, m/s; negative while it falls
 * @param rateVariance of that, (m/s)²
 */
public record Tip(boolean isKnown, double heightM, double rateMps, double rateVariance) {
    /** One of which nothing is known. */
    public static final Tip UNKNOWN = new Tip(false, Double.NaN, Double.NaN, Double.NaN);
}
