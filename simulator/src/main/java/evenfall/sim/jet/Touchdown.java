package evenfall.sim.jet;

/**
 * One stream as it meets the ground, seen from its hole in the machine's frame.
 *
 * @param rightM m to the right of the hole
 * @param backM m behind the hole, as both are when the liquid comes down
 * @param flightS time in the air, s
 * @param pathM length of the way against the outlet, m
 * @param jetM how much of it as a coherent jet, m
 * @param rightMps velocity at the ground to the right, m/s
 * @param backMps velocity at the ground to the rear, in the machine's frame, m/s
 * @param downMps velocity at the ground downwards, m/s
 * @param sigmaM spread of the liquid across the rows, standard deviation, m
 */
public record Touchdown(
        double rightM,
        double backM,
        double flightS,
        double pathM,
        double jetM,
        double rightMps,
        double backMps,
        double downMps,
        double sigmaM) {
    /** Width of the stream on the ground across the rows, m: of an evenly filled round stream, four standard deviations. */
    public double widthM() {
        return 4 * sigmaM;
    }
}
