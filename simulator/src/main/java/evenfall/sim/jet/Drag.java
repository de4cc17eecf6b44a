package evenfall.sim.jet;

/**
 * What still or moving air does to a jet and to a drop, per kilogram of liquid.
 *
 * <p>Jet: a round cylinder. Across its axis the drag coefficient is 1.1, a cylinder's at Reynolds numbers of 100 to 1,000 (from
 * memory); along its axis the skin friction of a thread drawn through air, {@code 0.37 Re^−0.61} (S. Matsui 1976, from memory),
 * about a fortieth of gravity for our streams. The column is taken to lie along its velocity in the machine's frame.
 *
 * <p>Drop: a sphere, {@code C = 24/Re (1 + 0.15 Re^0.687)} (L. Schiller and A. Naumann 1933, from memory) with the term
 * {@code 0.42 / (1 + 42500 Re^−1.16)} that leads it smoothly past a Reynolds number of 1,000 (R. Clift and W. Gauvin 1970, from
 * memory). Each drop is taken to fly alone; drops in each other's lee fly a little further.
 */
final class Drag {
    private static final double CYLINDER_COEFFICIENT = 1.1;

    /** Below this Reynolds number a drop is taken to creep by Stokes; keeps the quotient finite at rest. */
    private static final double LEAST_REYNOLDS = 1e-9;

    private Drag() {}

    static double sphereCoefficient(double reynolds) {
        double re = Math.max(reynolds, LEAST_REYNOLDS);
        return 24 / re * (1 + 0.15 * StrictMath.pow(re, 0.687)) + 0.42 / (1 + 42500 * StrictMath.pow(re, -1.16));
    }

    /** Slowing of a drop, 1/s: its acceleration over its speed against the air. */
    static double dropPerS(Air air, double liquidKgpM3, double diameterM, double againstAirMps) {
        if (air.densityKgpM3() <= 0 || againstAirMps <= 0) {
            return 0;
        }
        double reynolds = air.densityKgpM3() * againstAirMps * diameterM / air.viscosityPas();
        return 0.75 * sphereCoefficient(reynolds) * air.densityKgpM3() * againstAirMps / (liquidKgpM3 * diameterM);
    }

    /** Slowing of a jet across its axis, 1/s. */
    static double jetAcrossPerS(Air air, double liquidKgpM3, double diameterM, double acrossMps) {
        return 2 * CYLINDER_COEFFICIENT * air.densityKgpM3() * acrossMps / (StrictMath.PI * liquidKgpM3 * diameterM);
    }

    /** Slowing of a jet along its axis, 1/s. */
    static double jetAlongPerS(Air air, double liquidKgpM3, double diameterM, double alongMps) {
        if (air.densityKgpM3() <= 0 || alongMps <= 0) {
            return 0;
        }
        double reynolds = air.densityKgpM3() * alongMps * diameterM / air.viscosityPas();
        double friction = 0.37 * StrictMath.pow(Math.max(reynolds, 1), -0.61);
        return 2 * friction * air.densityKgpM3() * alongMps / (liquidKgpM3 * diameterM);
    }
}
