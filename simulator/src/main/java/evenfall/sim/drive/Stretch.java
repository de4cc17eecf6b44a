package evenfall.sim.drive;

/**
 * A length of path whose curvature changes evenly from one end to the other: a straight, an arc, or the
 * run-in between them (a clothoid).
 *
 * @param lengthM m, above 0; infinite only for a straight
 * @param fromPerM curvature at its beginning, 1/m, positive to the right
 * @param toPerM curvature at its end, 1/m
 */
record Stretch(double lengthM, double fromPerM, double toPerM) {

    static Stretch straight(double lengthM) {
        return new Stretch(lengthM, 0, 0);
    }

    double curvaturePerM(double alongM) {
        return fromPerM == toPerM ? fromPerM : fromPerM + (toPerM - fromPerM) * alongM / lengthM;
    }

    /** How far it has turned to the right after this length, rad. */
    double turnedRad(double alongM) {
        return fromPerM == toPerM
                ? fromPerM * alongM
                : alongM * (fromPerM + 0.5 * (toPerM - fromPerM) * alongM / lengthM);
    }
}
