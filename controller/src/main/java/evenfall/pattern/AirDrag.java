package evenfall.pattern;

/**
 * How far air lets a stream fly sideways, to first order. A stream flies whole, and air does little to it sideways, up to its break-up
 * length; from there on it is drops.
 *
 * <p>Break-up length by R. Grant and S. Middleman, AIChE Journal 12 (1966), from memory: {@code 19.5 d √We} for a laminar jet,
 * {@code 8.51 d We^0.32} for a turbulent one; the change from one to the other is put at a Reynolds number of 2,800, between 2,000 and 4,000.
 *
 * <p>A drop of diameter D that flies through air at w is slowed by {@code λ = ¾ C ρ_air w / (ρ D)} per second, so a speed across the way
 * carries it {@code u (1 − e^−λt) / λ} and not {@code u t}. D is 1.89 jet diameters (Lord Rayleigh, 1878, from memory), C that of a sphere
 * (L. Schiller and A. Naumann, 1933, from memory), w taken as it is in the middle of the flight. It falls more slowly too, and so for
 * longer: a stream aimed down lands almost where it would without air, one thrown to the rear falls short to the side.
 */
final class AirDrag {
    /** kg/m³ and Pa·s at 15 °C and sea level (International Standard Atmosphere, from memory). */
    private static final double AIR_KGPM3 = 1.225;

    private static final double AIR_PAS = 1.79e-5;
    private static final double WATER_KGPM3 = 1000;

    /** N/m; water 0.073, fertiliser a little less. Our choice. */
    private static final double TENSION_NPM = 0.07;

    /** Pa·s of water, and how many times that of a liquid of 1.28: 2.5, remembered of UAN 28. Our choice. */
    private static final double WATER_PAS = 1.0e-3;

    private static final double UAN_OVER_WATER = 2.5;
    private static final double TURBULENT_FROM_RE = 2800;
    private static final double DROP_OVER_JET = 1.89;

    /** Read between, the slowing is right to a ten-thousandth; a power for each stream at each moment would cost more than all else. */
    private static final double STEP_MPS = 0.1;

    private static final int STEPS = 400;

    /** Terms of the series for {@code (1 − e^−x) / x}: right to 1e-9 up to {@link #SERIES_UP_TO}. */
    private static final int TERMS = 12;

    private static final double SERIES_UP_TO = 1;

    private final double dropM;
    private final double densityKgpM3;
    private final double wholeS;

    /** How much a drop is slowed per second, by its speed against the air in steps of {@link #STEP_MPS}. */
    private final double[] slowsPerS = new double[STEPS + 1];

    /**
     * @param streamM3ps flow of the stream with water at the rated point, m³/s
     * @param exitMps its speed there, m/s
     * @param specificGravity of the product
     */
    AirDrag(double streamM3ps, double exitMps, double specificGravity) {
        double jetM = Math.sqrt(4 * streamM3ps / (StrictMath.PI * exitMps));
        dropM = DROP_OVER_JET * jetM;
        densityKgpM3 = WATER_KGPM3 * specificGravity;
        double weber = densityKgpM3 * exitMps * exitMps * jetM / TENSION_NPM;
        double viscosityPas = WATER_PAS * StrictMath.pow(UAN_OVER_WATER, (specificGravity - 1) / 0.28);
        double reynolds = densityKgpM3 * exitMps * jetM / viscosityPas;
        double diameters = reynolds < TURBULENT_FROM_RE ? 19.5 * Math.sqrt(weber) : 8.51 * StrictMath.pow(weber, 0.32);
        // A faster jet is whole for longer and through sooner.
        wholeS = diameters * jetM / exitMps;
        for (int i = 0; i < slowsPerS.length; i++) {
            slowsPerS[i] = slowsPerS(i * STEP_MPS);
        }
    }

    /** {@code λ} of the class comment; at rest by the law of Stokes, to which C tends there. */
    private double slowsPerS(double againstMps) {
        if (!(againstMps > 0)) {
            return 18 * AIR_PAS / (densityKgpM3 * dropM * dropM);
        }
        double reynolds = AIR_KGPM3 * againstMps * dropM / AIR_PAS;
        double sphere = Math.max(0.42, 24 / reynolds * (1 + 0.15 * StrictMath.pow(reynolds, 0.687)));
        return 0.75 * sphere * AIR_KGPM3 * againstMps / (densityKgpM3 * dropM);
    }

    private double slowsAt(double againstMps) {
        double place = againstMps / STEP_MPS;
        int i = (int) place;
        if (i >= STEPS) {
            return slowsPerS(againstMps);
        }
        return slowsPerS[i] + (place - i) * (slowsPerS[i + 1] - slowsPerS[i]);
    }

    /** {@code (1 − e^−x) / x}, for x of 0 or more. */
    private static double carriedPart(double x) {
        if (x > SERIES_UP_TO) {
            return -StrictMath.expm1(-x) / x;
        }
        double sum = 1;
        for (int k = TERMS; k >= 1; k--) {
            sum = 1 - x / (k + 1) * sum;
        }
        return sum;
    }

    /**
     * The time for which a speed without drag would carry as far sideways.
     *
     * @param flightS time in the air without drag, s
     * @param downMps speed downwards at the hole, m/s
     * @param againstMps speed against the air, m/s
     */
    double carriesS(double flightS, double downMps, double againstMps) {
        double dropsS = flightS - wholeS;
        if (!(dropsS > 0)) {
            return flightS;
        }
        double slowing = slowsAt(againstMps);
        // What falls more slowly falls for longer; one step of Newton's method finds how long.
        double fallMps = downMps + Flight.GRAVITY_MPS2 * wholeS;
        double carried = dropsS * carriedPart(slowing * dropsS);
        double freeM = dropsS * (fallMps + 0.5 * Flight.GRAVITY_MPS2 * dropsS);
        double slowedM = fallMps * carried + Flight.GRAVITY_MPS2 * (dropsS - carried) / slowing;
        double endMps = fallMps * (1 - slowing * carried) + Flight.GRAVITY_MPS2 * carried;
        double longerS = endMps > 0 ? (freeM - slowedM) / endMps : 0;
        double wholeDropsS = dropsS + longerS;
        return wholeS + wholeDropsS * carriedPart(slowing * wholeDropsS);
    }
}
