package evenfall.outlet;

/** Finds the splay angle at which a stream lands a wanted distance to the side; flight without drag. */
final class SplayAngle {
    private static final double GRAVITY_MPS2 = 9.80665;

    /** Halvings of the interval: 2^-60 of a right angle is far below any drilling tolerance. */
    private static final int HALVINGS = 60;

    private SplayAngle() {}

    /**
     * @param rightM wanted landing place, m to the right of the hole
     * @param heightM height of the hole above the ground, m, above 0
     * @param exitMps exit speed at the design point, m/s
     * @param tiltRad tilt to the rear, rad
     * @return splay angle, rad, with the sign of {@code rightM}
     */
    static double landingAt(double rightM, double heightM, double exitMps, double tiltRad) {
        double wantedM = Math.abs(rightM);
        double low = 0;
        double high = 0.5 * StrictMath.PI;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = 0.5 * (low + high);
            if (sideways(middle, heightM, exitMps, tiltRad) < wantedM) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return rightM < 0 ? -low : low;
    }

    private static double sideways(double splayRad, double heightM, double exitMps, double tiltRad) {
        double downMps = exitMps * StrictMath.cos(splayRad) * StrictMath.cos(tiltRad);
        double flightS = (-downMps + Math.sqrt(downMps * downMps + 2 * GRAVITY_MPS2 * heightM)) / GRAVITY_MPS2;
        return exitMps * StrictMath.sin(splayRad) * flightS;
    }
}
