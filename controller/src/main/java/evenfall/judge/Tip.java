package evenfall.judge;

/**
 * The end of a wing at one moment and where it will be: of the two outlets that bound its outer quarter, and of some moments ahead, the
 * height that is the likeliest to be under the clearance. Looked at twenty times a second, and so without an object for each number.
 *
 * @param isKnown whether its height is; the numbers count only where it is
 * @param isSure whether no sensor of the wing is suspected to be stuck
 * @param heightM over what the sensors see, now, m
 * @param aheadM the height that is expected there and then, m
 * @param aheadSdM and how well it is known: standard deviation, m; 0 where only what is sure counts
 * @param inS in how many seconds that is
 */
public record Tip(boolean isKnown, boolean isSure, double heightM, double aheadM, double aheadSdM, double inS) {
    /** One of which nothing is known. */
    public static final Tip UNKNOWN = new Tip(false, false, Double.NaN, Double.NaN, Double.NaN, Double.NaN);

    /** One that is and stays far from everything. */
    public static final Tip FAR =
            new Tip(true, true, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, 1, Double.POSITIVE_INFINITY);
}
