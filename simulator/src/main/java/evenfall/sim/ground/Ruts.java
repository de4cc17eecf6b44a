package evenfall.sim.ground;

/**
 * Two wheel ruts along the pass.
 *
 * @param fromM where they begin, m along the pass
 * @param toM where they end, m, beyond fromM
 * @param fadeM length over which they run out before and after, m, above 0
 * @param centreRightM the middle between them, to the right of the pass, m
 * @param gaugeM distance between their centres, m, 0 or above
 * @param widthM width of each at the top, m, above 0
 * @param leftDepthM depth of the left one, m, 0 or above
 * @param rightDepthM depth of the right one, m, 0 or above
 */
public record Ruts(
        double fromM,
        double toM,
        double fadeM,
        double centreRightM,
        double gaugeM,
        double widthM,
        double leftDepthM,
        double rightDepthM)
        implements Feature {

    public Ruts {
        if (!(fromM < toM)) {
            throw new IllegalArgumentException("ruts from " + fromM + " m to " + toM + " m have no length");
        }
        Smooth.requirePositive(fadeM, "fade of ruts, m,");
        Smooth.requireNotNegative(gaugeM, "gauge of ruts, m,");
        Smooth.requirePositive(widthM, "width of ruts, m,");
        Smooth.requireNotNegative(leftDepthM, "depth of the left rut, m,");
        Smooth.requireNotNegative(rightDepthM, "depth of the right rut, m,");
    }

    @Override
    public double heightM(double xM, double yM) {
        double share = Smooth.step(1.0 - (fromM - xM) / fadeM) * Smooth.step(1.0 - (xM - toM) / fadeM);
        double right = yM - centreRightM;
        return -share
                * (leftDepthM * Smooth.bump(2.0 * (right + gaugeM / 2) / widthM)
                        + rightDepthM * Smooth.bump(2.0 * (right - gaugeM / 2) / widthM));
    }
}
