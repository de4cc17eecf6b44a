package evenfall.sim.jet;

/**
 * How a stream leaves its hole, in the machine's frame.
 *
 * @param rightMps velocity of the liquid to the right, m/s, the outlet's own velocity with it
 * @param backMps the same to the rear, m/s
 * @param downMps the same downwards, m/s
 * @param carriedRightMps what of it is the outlet's own velocity, m/s
 * @param carriedBackMps the same to the rear, m/s
 * @param carriedDownMps the same downwards, m/s
 * @param wholeM how far the jet stays whole, m from the hole
 */
public record Launch(
        double rightMps,
        double backMps,
        double downMps,
        double carriedRightMps,
        double carriedBackMps,
        double carriedDownMps,
        double wholeM) {}
