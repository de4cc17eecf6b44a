package evenfall.pattern;

/**
 * A stream's flight without drag: {@code t = (−u_d + √(u_d² + 2 g h)) / g}, the positive root of {@code h = u_d t + g t²/2}
 * (constant acceleration; OpenStax University Physics 1, §4.3).
 */
public final class Flight {
    /** Standard gravity, m/s² (3rd General Conference on Weights and Measures, 1901). */
    public static final double GRAVITY_MPS2 = 9.80665;

    private Flight() {}

    /**
     * @param downMps speed downwards at the hole, m/s; negative where the stream rises
     * @param heightM height of the hole over the ground, m; below 0 the outlet is in the crop or soil
     * @return time in the air, s, 0 or more
     */
    public static double timeS(double downMps, double heightM) {
        if (heightM < 0) {
            return 0;
        }
        return (-downMps + Math.sqrt(downMps * downMps + 2 * GRAVITY_MPS2 * heightM)) / GRAVITY_MPS2;
    }
}
